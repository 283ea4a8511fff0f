import { type Color, ShaderMaterial, Vector3 } from "three";

const VERTEX = `
attribute float distance_;
varying float vDistance;
varying float vFacing;
#include <clipping_planes_pars_vertex>
void main() {
  vDistance = distance_;
  vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
  #include <clipping_planes_vertex>
  vFacing = abs(normalize(normalMatrix * normal).z);
  gl_Position = projectionMatrix * mvPosition;
}`;

// Bands differ by their hatching as well as by color: close lines, wide lines, none, and a fainter fill.
const FRAGMENT = `
uniform vec3 tones[4];
uniform vec3 edges;
uniform float scale;
varying float vDistance;
varying float vFacing;
#include <clipping_planes_pars_fragment>
void main() {
  #include <clipping_planes_fragment>
  int band = vDistance < edges.x ? 0 : vDistance < edges.y ? 1 : vDistance < edges.z ? 2 : 3;
  vec2 at = gl_FragCoord.xy / scale;
  float lean = at.x + at.y;
  bool line = band == 0 ? mod(lean, 6.0) < 1.8 : band == 1 ? mod(lean, 11.0) < 1.4 : false;
  float fill = band == 3 ? 0.10 : 0.22;
  float alpha = line ? 0.8 : fill + 0.16 * (1.0 - vFacing);
  gl_FragColor = vec4(tones[band], alpha);
  #include <colorspace_fragment>
}`;

/** Fill of a surface with a distance at each vertex (`distance_`), in bands that end at the uniform `edges`, mm. */
export function bandMaterial(tones: readonly [Color, Color, Color, Color]): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    uniforms: { tones: { value: tones }, edges: { value: new Vector3() }, scale: { value: 1 } },
    transparent: true,
    depthWrite: false,
    clipping: true,
  });
}
