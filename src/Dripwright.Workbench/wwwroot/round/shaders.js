// One form of unit size, put by each instance from one end of its axis to the other. All in metres.

export const vertex = `#version 300 es
in vec3 position; in vec3 normal;
in vec3 from; in vec3 to; in vec4 wide; in vec3 paint; in vec3 water;
uniform mat4 modelViewMatrix; uniform mat4 projectionMatrix; uniform mat3 normalMatrix;
out vec3 vNormal; out vec3 vPaint; out vec3 vAt; out vec3 vWater; out float vAlong; out float vLong;
void main() {
  vec3 axis = to - from;
  float reach = max(length(axis), 1e-6);
  vec3 d = axis / reach;
  // Upright forms lie along the room's axes; others have one side level.
  bool upright = abs(d.z) > 0.999;
  vec3 u = upright ? vec3(1.0, 0.0, 0.0) : normalize(cross(d, vec3(0.0, 0.0, 1.0)));
  vec3 v = cross(d, u);
  vec2 w = mix(wide.xy, wide.zw, position.z);
  vec3 place = from + axis * position.z + u * position.x * w.x + v * position.y * w.y;
  vNormal = normalMatrix * normalize(u * normal.x / w.x + v * normal.y / w.y + d * normal.z * 2.0 / reach);
  vPaint = paint; vWater = water; vAt = position; vLong = reach; vAlong = water.y + reach * position.z;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(place, 1.0);
}`;

// Lines where a draughtsman would draw them: outlines of what is round, edges of what is square, ends.
export const face = (isSquare) => `#version 300 es
precision highp float;
in vec3 vNormal; in vec3 vPaint; in vec3 vAt; in vec3 vWater; in float vAlong; in float vLong;
uniform vec3 ink; uniform vec3 drop; uniform float time;
out vec4 seen;
float line(float away) { return 1.0 - smoothstep(0.8, 1.6, away / max(fwidth(away), 1e-6)); }
void main() {
  vec3 n = normalize(vNormal) * (gl_FrontFacing ? 1.0 : -1.0);
  float lit = 0.5 + 0.5 * dot(n, normalize(vec3(-0.4, 0.75, 0.55)));
  vec3 shade = mix(vPaint, ink, 0.32);
  vec3 told = mix(shade, vPaint, smoothstep(0.15, 0.85, lit));
  if (!gl_FrontFacing) { told = mix(told, ink, 0.25); }
  if (vWater.x != 0.0) {
    // Stripes a tenth of a metre apart, going as fast as the water.
    float stripe = fract((vAlong - vWater.x * time) / 0.1);
    told = mix(told, drop, smoothstep(0.0, 0.08, stripe) * (1.0 - smoothstep(0.34, 0.42, stripe)) * 0.75);
  }
  float edge = 0.0;
  ${
    isSquare
      ? `vec3 away = 1.0 - abs(vec3(vAt.xy, vAt.z * 2.0 - 1.0));
  float least = min(away.x, min(away.y, away.z));
  float most = max(away.x, max(away.y, away.z));
  float middle = away.x + away.y + away.z - least - most;
  edge = line(middle) * vWater.z;`
      : `edge = line(min(vAt.z, 1.0 - vAt.z)) * vWater.z * step(0.98, length(vAt.xy));
  edge = max(edge, (1.0 - smoothstep(0.08, 0.3, abs(n.z))) * 0.6 * step(0.5, vLong / 0.03));`
  }
  seen = vec4(mix(told, ink, edge * 0.85), 1.0);
}`;
