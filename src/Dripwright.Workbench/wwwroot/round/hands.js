// Hands on a picture that turns: mouse, fingers, keys and wheel. What they do is the picture's own.

const step = Math.PI / 12;

// turn(yaw, pitch, zoom) and whole() are asked of every picture; shift(right, down), tap(event) and hover(event) of one that has them.
// A pixel turns it by "speed", a key makes it larger by "larger"; takesWheel(event) says whether the wheel is the picture's or the page's.
export function listen(canvas, { turn, whole, shift, tap, hover, speed, larger, takesWheel }) {
  const fingers = new Map();
  // A tap is no drag: a hand that shakes this far still taps.
  const slack = tap ? 4 : 0;
  let [moved, apart] = [0, 0];
  const spread = () => {
    const [a, b] = [...fingers.values()];
    return Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
  };
  canvas.addEventListener("pointerdown", (event) => {
    canvas.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, event);
    moved = fingers.size === 1 ? 0 : 100;
    apart = fingers.size === 2 ? spread() : 0;
    hover?.(null);
  });
  canvas.addEventListener("pointermove", (event) => {
    const before = fingers.get(event.pointerId);
    if (!before) {
      hover?.(event.pointerType === "mouse" ? event : null);
      return;
    }
    fingers.set(event.pointerId, event);
    const [right, down] = [event.clientX - before.clientX, event.clientY - before.clientY];
    moved += Math.abs(right) + Math.abs(down);
    if (fingers.size === 2 && apart > 0) {
      const now = spread();
      turn(0, 0, now / apart);
      shift?.(right / 2, down / 2);
      apart = now;
    } else if (shift && (event.shiftKey || event.buttons === 2 || event.buttons === 4)) {
      shift(right, down);
    } else if (fingers.size === 1 && moved > slack) {
      turn(right * speed, down * speed, 1);
    }
  });
  canvas.addEventListener("pointerup", (event) => {
    if (fingers.size === 1 && moved <= slack) {
      tap?.(event);
    }
  });
  for (const name of ["pointerup", "pointercancel", "lostpointercapture"]) {
    canvas.addEventListener(name, (event) => fingers.delete(event.pointerId));
  }
  canvas.addEventListener("pointerleave", () => hover?.(null));
  if (shift) {
    canvas.addEventListener("contextmenu", (event) => event.preventDefault());
  }
  const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  const sizes = { "+": larger, "=": larger, "-": 1 / larger };
  canvas.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const way = arrows[event.key];
    if (event.key === "Home" || event.key === "0") {
      whole();
    } else if (way && shift && event.shiftKey) {
      shift(-40 * way[0], -40 * way[1]);
    } else if (way) {
      turn(step * way[0], step * way[1], 1);
    } else if (sizes[event.key]) {
      turn(0, 0, sizes[event.key]);
    } else {
      return;
    }
    event.preventDefault();
  });
  canvas.addEventListener(
    "wheel",
    (event) => {
      if (takesWheel(event)) {
        event.preventDefault();
        turn(0, 0, event.deltaY < 0 ? 1.15 : 1 / 1.15);
      }
    },
    { passive: false },
  );
}

// A colour of the page by its role, as three shares of one.
export const colour = (role) => rgb(getComputedStyle(document.documentElement).getPropertyValue(role).trim().slice(1));

// "0b539c" as three shares of one.
export const rgb = (hex) => [0, 2, 4].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
