// Which thing lies under a point of the picture: the nearest form that a straight look meets.

const minus = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a, b, share) => [a[0] + share * b[0], a[1] + share * b[1], a[2] + share * b[2]];
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

// From the screen's axes to the room's: first the tilt back, then the turn, then z up.
function room([x, y, z], pitch, yaw) {
  const [sp, cp, sy, cy] = [Math.sin(pitch), Math.cos(pitch), Math.sin(yaw), Math.cos(yaw)];
  const tilted = [x, y * cp + z * sp, -y * sp + z * cp];
  const turned = [tilted[0] * cy - tilted[2] * sy, tilted[1], tilted[0] * sy + tilted[2] * cy];
  return [turned[0], -turned[2], turned[1]];
}

// How near a look passes the axis of a piece, and how far in front of the middle that is.
function passed(eye, way, piece) {
  const axis = minus(piece.to, piece.from);
  const off = minus(eye, piece.from);
  const [aa, ab, ao, bo] = [dot(axis, axis), dot(axis, way), dot(axis, off), dot(way, off)];
  const flat = aa - ab * ab;
  const along = Math.min(Math.max(flat > 1e-12 ? (ao - ab * bo) / flat : 0.5, 0), 1);
  const on = plus(piece.from, axis, along);
  const depth = dot(minus(on, eye), way);
  const near = plus(eye, way, depth);
  const wide = [0, 1].map((side) => piece.wide[side] + along * (piece.wide[side + 2] - piece.wide[side]));
  return { depth, away: Math.hypot(...minus(on, near)), reach: Math.max(...wide) };
}

// The point is on the screen's plane through the rig's middle, in metres; what is thin can be met within a few pixels.
export function picked(view, [x, y], slack) {
  const eye = plus(view.middle, room([x, y, 0], view.pitch, view.yaw), 1);
  const way = room([0, 0, -1], view.pitch, view.yaw);
  let best = null;
  for (const piece of view.shown) {
    const { depth, away, reach } = passed(eye, way, piece);
    if (away <= Math.max(reach, slack)) {
      // A wide form is met at its skin, before its axis; a leaf yields to what it belongs to anyway.
      const met = depth - Math.min(reach, Math.sqrt(Math.max(reach * reach - away * away, 0)));
      if (best === null || met < best.met) {
        best = { met, thing: piece.thing };
      }
    }
  }
  return best?.thing ?? null;
}
