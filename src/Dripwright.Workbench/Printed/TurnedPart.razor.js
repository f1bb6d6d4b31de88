// A printed part that can be turned: by mouse, finger, keys and buttons. It moves only while it is moved, and never by itself.

import { colour, listen } from "../round/hands.js";

const start = { yaw: -0.6, pitch: 0.5, zoom: 1 };
let view = null;

const dark = matchMedia("(prefers-color-scheme: dark)");

// Edges where two faces meet at a bend: the lines that a draughtsman would draw.
function edges(points, normals) {
  const numbers = new Map();
  const number = (at) => {
    const key = `${points[at]} ${points[at + 1]} ${points[at + 2]}`;
    let known = numbers.get(key);
    if (known === undefined) {
      known = numbers.size;
      numbers.set(key, known);
    }
    return known;
  };
  const sides = new Map();
  const lines = [];
  for (let triangle = 0; triangle < points.length; triangle += 9) {
    const corners = [number(triangle), number(triangle + 3), number(triangle + 6)];
    for (let i = 0; i < 3; i++) {
      const [a, b] = [corners[i], corners[(i + 1) % 3]];
      const key = a < b ? `${a} ${b}` : `${b} ${a}`;
      const other = sides.get(key);
      if (other === undefined) {
        sides.set(key, triangle);
        continue;
      }
      const bend = normals[triangle] * normals[other] + normals[triangle + 1] * normals[other + 1] + normals[triangle + 2] * normals[other + 2];
      if (bend < 0.85) {
        for (const at of [triangle + 3 * i, triangle + 3 * ((i + 1) % 3)]) {
          lines.push(points[at], points[at + 1], points[at + 2]);
        }
      }
    }
  }
  return new Float32Array(lines);
}

function flat(points) {
  const normals = new Float32Array(points.length);
  for (let i = 0; i < points.length; i += 9) {
    const u = [points[i + 3] - points[i], points[i + 4] - points[i + 1], points[i + 5] - points[i + 2]];
    const v = [points[i + 6] - points[i], points[i + 7] - points[i + 1], points[i + 8] - points[i + 2]];
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    const length = Math.hypot(...n) || 1;
    for (let corner = 0; corner < 3; corner++) {
      for (let axis = 0; axis < 3; axis++) {
        normals[i + 3 * corner + axis] = n[axis] / length;
      }
    }
  }
  return normals;
}

// The part's middle comes to the origin, so that it turns about itself.
function centred(points) {
  let reach = 0;
  for (let axis = 0; axis < 3; axis++) {
    let [low, high] = [Infinity, -Infinity];
    for (let i = axis; i < points.length; i += 3) {
      low = Math.min(low, points[i]);
      high = Math.max(high, points[i]);
    }
    for (let i = axis; i < points.length; i += 3) {
      points[i] -= (low + high) / 2;
    }
    reach += ((high - low) / 2) ** 2;
  }
  return Math.sqrt(reach);
}

const vertex = `
attribute vec3 position; attribute vec3 normal;
uniform mat4 modelViewMatrix; uniform mat4 projectionMatrix; uniform mat3 normalMatrix;
varying vec3 vNormal;
void main() { vNormal = normalMatrix * normal; gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }`;
const face = `
precision highp float;
uniform vec3 light; uniform vec3 shade; varying vec3 vNormal;
void main() { float lit = 0.5 + 0.5 * dot(normalize(vNormal), normalize(vec3(-0.4, 0.75, 0.55))); gl_FragColor = vec4(mix(shade, light, lit), 1.0); }`;
const stroke = `
precision highp float;
uniform vec3 ink;
void main() { gl_FragColor = vec4(ink, 1.0); }`;
const line = `
attribute vec3 position;
uniform mat4 modelViewMatrix; uniform mat4 projectionMatrix;
void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }`;

function draw() {
  if (!view?.canvas.isConnected) {
    return;
  }
  const { canvas, renderer, camera, tilt, turn, scene, faces, lines, reach } = view;
  const [width, height] = [canvas.parentElement.clientWidth, Math.min(Math.max(canvas.parentElement.clientWidth * 0.7, 220), 460)];
  renderer.setSize(width, height);
  const half = (reach * 1.08) / view.zoom;
  const wide = width / height;
  const [x, y] = wide > 1 ? [half * wide, half] : [half, half / wide];
  camera.orthographic({ left: -x, right: x, bottom: -y, top: y, near: 0.1, far: reach * 8 });
  camera.position.set(0, 0, reach * 4);
  tilt.rotation.x = view.pitch;
  turn.rotation.y = view.yaw;
  const [paper, ink, soft] = ["--paper", "--ink", "--soft"].map(colour);
  const mixed = (share) => paper.map((value, i) => value + (soft[i] - value) * share);
  faces.uniforms.light.value = mixed(dark.matches ? 0.75 : 0.08);
  faces.uniforms.shade.value = mixed(dark.matches ? 0.2 : 0.75);
  lines.uniforms.ink.value = ink;
  renderer.render({ scene, camera });
}

let waits = false;
function soon() {
  if (!waits) {
    waits = true;
    requestAnimationFrame(() => {
      waits = false;
      draw();
    });
  }
}

export function turn(yaw, pitch, zoom) {
  if (view) {
    view.yaw += yaw;
    view.pitch = Math.min(Math.max(view.pitch + pitch, -Math.PI / 2), Math.PI / 2);
    view.zoom = Math.min(Math.max(view.zoom * zoom, 0.5), 8);
    view.canvas.dataset.turned = `${view.yaw.toFixed(2)} ${view.pitch.toFixed(2)} ${view.zoom.toFixed(2)}`;
    soon();
  }
}

export function whole() {
  if (view) {
    turn(start.yaw - view.yaw, start.pitch - view.pitch, start.zoom / view.zoom);
  }
}

const able = () => {
  const probe = document.createElement("canvas");
  const context = probe.getContext("webgl2") ?? probe.getContext("webgl");
  context?.getExtension("WEBGL_lose_context")?.loseContext();
  return context !== null;
};

// False where the browser draws nothing in 3D: then the still picture stays.
export async function show(canvas, number, bytes) {
  if (!view && !able()) {
    return false;
  }
  const points = new Float32Array(bytes.slice().buffer);
  const { Camera, Geometry, Mesh, Program, Renderer, Transform } = await import("../ogl/ogl.js");
  if (view && view.canvas !== canvas) {
    close();
  }
  canvas.hidden = false;
  const reach = centred(points);
  const normals = flat(points);
  const renderer = view?.renderer ?? new Renderer({ canvas, dpr: Math.min(devicePixelRatio, 2), alpha: true, antialias: true });
  const gl = renderer.gl;
  gl.enable(gl.POLYGON_OFFSET_FILL);
  gl.polygonOffset(1, 1);
  const faces = new Program(gl, { vertex, fragment: face, uniforms: { light: { value: [1, 1, 1] }, shade: { value: [0, 0, 0] } } });
  const lines = new Program(gl, { vertex: line, fragment: stroke, uniforms: { ink: { value: [0, 0, 0] } } });
  const scene = new Transform();
  const tilt = new Transform();
  const turned = new Transform();
  const upright = new Transform();
  // Parts are drawn with z up, screens with y up.
  upright.rotation.x = -Math.PI / 2;
  tilt.setParent(scene);
  turned.setParent(tilt);
  upright.setParent(turned);
  new Mesh(gl, {
    geometry: new Geometry(gl, { position: { size: 3, data: points }, normal: { size: 3, data: normals } }),
    program: faces,
  }).setParent(upright);
  new Mesh(gl, { mode: gl.LINES, geometry: new Geometry(gl, { position: { size: 3, data: edges(points, normals) } }), program: lines }).setParent(upright);
  if (!view) {
    listen(canvas, { turn, whole, speed: 0.01, larger: 1.2, takesWheel: (event) => event.ctrlKey });
    dark.addEventListener("change", soon);
    addEventListener("resize", soon);
  }
  view = { ...start, canvas, renderer, camera: new Camera(gl), scene, tilt, turn: turned, faces, lines, reach };
  // Which part's solid it is, for whoever looks from outside.
  canvas.dataset.part = number;
  turn(0, 0, 1);
  return true;
}

export function close() {
  if (view) {
    dark.removeEventListener("change", soon);
    removeEventListener("resize", soon);
    view.renderer.gl.getExtension("WEBGL_lose_context")?.loseContext();
    view = null;
  }
}
