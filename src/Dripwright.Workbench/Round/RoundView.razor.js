// The rig in the round. It turns under mouse, finger, keys and buttons; only the water moves by itself, and only while it is let run.
// Every form is one mesh that the graphics card repeats: five draw calls, however many pots there are.

import { colour, listen, rgb } from "../round/hands.js";
import { picked } from "../round/picking.js";
import { face, vertex } from "../round/shaders.js";

const start = { yaw: -0.55, pitch: 0.42, zoom: 1, x: 0, y: 0 };
const bytesOfPiece = 28;
// Colours of matters, in the order of the engine's list: which role of the page, and how much paper is mixed in.
const matters = [
  ["--ink", 0.55],
  ["--care", 0.35],
  ["--soft", 0.72],
  ["--care", 0.15],
  ["--water", 0],
  ["--water", 0.42],
  ["--water", 0.25],
  ["--soft", 0.6],
  ["--ink", 0.2],
  ["--ink", 0.3],
  ["--plant", 0.2],
  ["--plant", 0.4],
];
// Of these the ends are drawn as lines: what is one thing from end to end, not a stretch of a longer one.
const ended = new Set([0, 1, 2, 3, 7, 8]);
const dark = matchMedia("(prefers-color-scheme: dark)");
const calm = matchMedia("(prefers-reduced-motion: reduce)");
let view = null;

const mixed = (a, b, share) => a.map((value, i) => value + (b[i] - value) * share);

function colours(data) {
  const paper = colour("--paper");
  const own = matters.map(([role, share]) => mixed(colour(role), paper, share));
  const ramp = data.ramp.map((hex) => rgb(hex.slice(1)));
  // 0: its own; 1 to 6: a step of the scale; 7: over its limit; 8: the one that gets least.
  return (matter, shade) => (shade === 0 ? own[matter] : shade === 7 ? colour("--stop") : shade === 8 ? colour("--care") : ramp[shade - 1]);
}

// The engine's pieces as arrays, one entry a piece.
function read(data) {
  const bytes = data.pieces;
  const at = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const pieces = [];
  for (let i = 0; i < bytes.byteLength; i += bytesOfPiece) {
    const place = (offset) => [0, 1, 2].map((axis) => data.least[axis] + at.getUint16(i + offset + 2 * axis, true) * data.step);
    pieces.push({
      from: place(0),
      to: place(6),
      wide: [0, 1, 2, 3].map((side) => at.getUint16(i + 12 + 2 * side, true) / 10000),
      thing: at.getUint16(i + 20, true),
      speed: at.getInt16(i + 22, true) / 1000,
      form: at.getUint8(i + 24),
      matter: at.getUint8(i + 25),
      shade: at.getUint8(i + 26),
      stage: at.getUint8(i + 27),
      along: 0,
    });
  }
  // Stretches of one run follow each other: their stripes go on from one to the next.
  for (let i = 1; i < pieces.length; i++) {
    const [a, b] = [pieces[i - 1], pieces[i]];
    if (a.thing === b.thing && a.speed !== 0 && b.speed !== 0) {
      b.along = a.along + Math.hypot(...a.to.map((value, axis) => value - a.from[axis]));
    }
  }
  return pieces;
}

function meshes(view) {
  const { ogl, gl, data, pieces, upright } = view;
  for (const mesh of view.meshes) {
    mesh.setParent(null);
    mesh.geometry.remove();
  }
  const shown = pieces.filter((piece) => piece.stage <= view.upTo);
  const told = colours(data);
  view.shown = shown;
  view.meshes = data.forms.map((form, number) => {
    const these = shown.filter((piece) => piece.form === number);
    const flat = (size, of) => {
      const values = new Float32Array(these.length * size);
      these.forEach((piece, i) => values.set(of(piece), i * size));
      return { instanced: 1, size, data: values };
    };
    const geometry = new ogl.Geometry(gl, {
      position: { size: 3, data: new Float32Array(form.corners) },
      normal: { size: 3, data: new Float32Array(form.normals) },
      from: flat(3, (piece) => piece.from),
      to: flat(3, (piece) => piece.to),
      wide: flat(4, (piece) => piece.wide),
      paint: flat(3, (piece) => told(piece.matter, piece.shade)),
      water: flat(3, (piece) => [piece.speed, piece.along, ended.has(piece.matter) ? 1 : 0]),
    });
    geometry.setInstancedCount(these.length);
    const mesh = new ogl.Mesh(gl, { geometry, program: form.square ? view.squares : view.rounds, frustumCulled: false });
    mesh.visible = these.length > 0;
    mesh.setParent(upright);
    return mesh;
  });
  const canvas = view.canvas;
  canvas.dataset.pieces = shown.length;
  canvas.dataset.calls = view.meshes.filter((mesh) => mesh.visible).length;
}

// How far the rig reaches across the screen as it is turned: what the camera must see at size 1, and where its middle is.
function reaches(view) {
  const sign = `${view.yaw} ${view.pitch}`;
  if (view.reached?.sign === sign && view.reached.of === view.pieces) {
    return view.reached;
  }
  const [sp, cp, sy, cy] = [Math.sin(view.pitch), Math.cos(view.pitch), Math.sin(view.yaw), Math.cos(view.yaw)];
  const [low, high] = [[Infinity, Infinity], [-Infinity, -Infinity]];
  for (const piece of view.pieces) {
    for (const [end, wide] of [
      [piece.from, Math.max(piece.wide[0], piece.wide[1])],
      [piece.to, Math.max(piece.wide[2], piece.wide[3])],
    ]) {
      const [x, y, z] = [0, 1, 2].map((axis) => end[axis] - view.middle[axis]);
      const away = -x * sy - y * cy;
      const seen = [x * cy - y * sy, z * cp - away * sp];
      for (const side of [0, 1]) {
        low[side] = Math.min(low[side], seen[side] - wide);
        high[side] = Math.max(high[side], seen[side] + wide);
      }
    }
  }
  view.reached = { sign, of: view.pieces, half: [0, 1].map((side) => (high[side] - low[side]) / 2), middle: [0, 1].map((side) => (high[side] + low[side]) / 2) };
  return view.reached;
}

// Half of what the camera sees, so that the whole rig fits at size 1.
function halves(view) {
  const { half } = reaches(view);
  const wide = view.width / view.height;
  const y = (Math.max(half[1], half[0] / wide) * 1.04) / view.zoom;
  return [y * wide, y];
}

// Where the camera looks: at the middle of what is seen, moved by hand.
function looks(view) {
  const { middle } = reaches(view);
  return [middle[0] + view.x, middle[1] + view.y];
}

function draw(time) {
  if (!view?.canvas.isConnected) {
    return;
  }
  const began = performance.now();
  const width = view.canvas.parentElement.clientWidth;
  const height = Math.round(Math.min(Math.max(width * 0.56, 230), 540, innerHeight * 0.6));
  if (width !== view.width || height !== view.height) {
    [view.width, view.height] = [width, height];
    view.renderer.setSize(width, height);
  }
  const [x, y] = halves(view);
  const reach = Math.hypot(...[0, 1, 2].map((axis) => view.data.most[axis] - view.data.least[axis])) + 1;
  view.camera.orthographic({ left: -x, right: x, bottom: -y, top: y, near: 0.1, far: reach * 4 });
  view.camera.position.set(...looks(view), reach * 2);
  view.tilt.rotation.x = view.pitch;
  view.turn.rotation.y = view.yaw;
  const [ink, paper] = [colour("--ink"), colour("--paper")];
  for (const program of [view.rounds, view.squares]) {
    program.uniforms.ink.value = dark.matches ? mixed(paper, [0, 0, 0], 0.5) : ink;
    program.uniforms.drop.value = mixed(paper, [1, 1, 1], dark.matches ? 0.9 : 0.3);
    program.uniforms.time.value = view.ran;
  }
  view.renderer.render({ scene: view.scene, camera: view.camera });
  view.frames++;
  view.spent += performance.now() - began;
  view.canvas.dataset.frame = (view.spent / view.frames).toFixed(2);
}

let waits = false;
let last = null;
function soon() {
  if (waits) {
    return;
  }
  waits = true;
  requestAnimationFrame((time) => {
    waits = false;
    if (view?.runs) {
      // A page that was away for long goes on where it was.
      view.ran += last === null ? 0 : Math.min((time - last) / 1000, 0.1);
      last = time;
    } else {
      last = null;
    }
    draw(time);
    if (view?.runs && view.canvas.isConnected) {
      soon();
    }
  });
}

export function turn(yaw, pitch, zoom) {
  if (view) {
    view.yaw += yaw;
    view.pitch = Math.min(Math.max(view.pitch + pitch, -0.1), Math.PI / 2);
    view.zoom = Math.min(Math.max(view.zoom * zoom, 0.5), 20);
    view.canvas.dataset.turned = `${view.yaw.toFixed(2)} ${view.pitch.toFixed(2)} ${view.zoom.toFixed(2)}`;
    tell(null);
    soon();
  }
}

function shift(right, down) {
  const [x, y] = halves(view);
  view.x -= (right / view.width) * 2 * x;
  view.y += (down / view.height) * 2 * y;
  tell(null);
  soon();
}

export function whole() {
  if (view) {
    Object.assign(view, start);
    turn(0, 0, 1);
  }
}

// What is built up to a stage is shown.
export function upTo(stage) {
  if (view) {
    view.upTo = stage;
    meshes(view);
    soon();
  }
}

// Lets the water run, or stops it.
export function run(on) {
  if (view) {
    view.runs = on;
    view.canvas.dataset.runs = on;
    soon();
  }
}

// Whether motion is wanted at all on this machine.
export const isCalm = () => calm.matches;

function tell(pick, event) {
  const word = view.word;
  word.hidden = pick === null;
  if (pick !== null) {
    word.textContent = view.data.labels[view.data.labelOf[pick]];
    const box = view.canvas.getBoundingClientRect();
    const left = Math.min(Math.max(event.clientX - box.left, 8), box.width - 8);
    word.style.left = `${left}px`;
    word.style.top = `${event.clientY - box.top}px`;
    word.dataset.side = left > box.width / 2 ? "left" : "right";
  }
}

function pick(event) {
  const box = view.canvas.getBoundingClientRect();
  const [x, y] = halves(view);
  const at = [((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2];
  const [middleX, middleY] = looks(view);
  return picked(view, [middleX + at[0] * x, middleY + at[1] * y], (2 * x * 6) / box.width);
}

// The wheel scrolls the page, as everywhere, until the picture has been taken hold of.
const takesWheel = (event) => event.ctrlKey || document.activeElement === view?.canvas;

function tap(event) {
  const tapped = pick(event);
  if (tapped !== null) {
    view.page.invokeMethodAsync("Tapped", view.data.things[tapped]);
  }
}

const hover = (event) => tell(event === null ? null : pick(event), event);

const able = () => {
  const context = document.createElement("canvas").getContext("webgl2");
  context?.getExtension("WEBGL_lose_context")?.loseContext();
  return context !== null;
};

function recolour() {
  if (view) {
    meshes(view);
    soon();
  }
}

// False where the browser draws nothing in 3D: then a flat drawing stands in its place.
export async function show(canvas, word, page, data) {
  if (!view && !able()) {
    return false;
  }
  const ogl = await import("../ogl/ogl.js");
  if (view && view.canvas !== canvas) {
    close();
  }
  if (!view) {
    canvas.hidden = false;
    const renderer = new ogl.Renderer({ canvas, dpr: Math.min(devicePixelRatio, 2), alpha: true, antialias: true });
    const gl = renderer.gl;
    const program = (isSquare) =>
      new ogl.Program(gl, {
        vertex,
        fragment: face(isSquare),
        cullFace: false,
        uniforms: { ink: { value: [0, 0, 0] }, drop: { value: [1, 1, 1] }, time: { value: 0 } },
      });
    const [scene, tilt, turned, upright] = [0, 1, 2, 3].map(() => new ogl.Transform());
    // The engine has z up, a screen y.
    upright.rotation.x = -Math.PI / 2;
    tilt.setParent(scene);
    turned.setParent(tilt);
    upright.setParent(turned);
    view = { ...start, canvas, word, page, ogl, gl, renderer, scene, tilt, turn: turned, upright, camera: new ogl.Camera(gl) };
    Object.assign(view, { rounds: program(false), squares: program(true), meshes: [], upTo: 99, runs: false, ran: 0, frames: 0, spent: 0 });
    listen(canvas, { turn, whole, shift, tap, hover, speed: 0.008, larger: 1.25, takesWheel });
    dark.addEventListener("change", recolour);
    addEventListener("resize", soon);
  }
  view.data = data;
  view.pieces = read(data);
  const middle = [0, 1, 2].map((axis) => (data.least[axis] + data.most[axis]) / 2);
  // It turns about its own middle. Upright turns (x, y, z) to (x, z, -y).
  view.upright.position.set(-middle[0], -middle[2], middle[1]);
  view.middle = middle;
  meshes(view);
  canvas.dataset.rig = data.name;
  turn(0, 0, 1);
  return true;
}

export function close() {
  if (view) {
    dark.removeEventListener("change", recolour);
    removeEventListener("resize", soon);
    view.gl.getExtension("WEBGL_lose_context")?.loseContext();
    view = null;
  }
}
