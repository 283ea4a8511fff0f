import {
  DoubleSide,
  type Material,
  ShaderMaterial,
  type ShaderMaterialParameters,
  type Texture,
} from "three";

// Looked up by where a corner faces, and mixed between corners: one look a pixel and nothing worked out, which is what a
// picture drawn in software can pay for.
const VERTEX = `
uniform float opacity;
varying vec2 vFacing;
varying float vThere;
#include <clipping_planes_pars_vertex>
void main() {
  vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
  #include <clipping_planes_vertex>
  vFacing = 0.495 * normalize(normalMatrix * normal).xy;
  vThere = opacity;
  #ifdef USE_COLOR_ALPHA
    vThere *= color.a;
  #endif
  gl_Position = projectionMatrix * mvPosition;
}`;

const FRAGMENT = `
uniform sampler2D ball;
varying vec2 vFacing;
varying float vThere;
#include <clipping_planes_pars_fragment>
void main() {
  #include <clipping_planes_fragment>
  gl_FragColor = vec4(texture2D(ball, 0.5 + (gl_FrontFacing ? vFacing : -vFacing)).rgb, vThere);
}`;

/**
 * A surface in the shade that a ball of its stuff has where it faces the same way.
 * @param ball see `litBall`; @param more a veil's opacity, what else a material is told
 */
export function stuffMaterial(ball: Texture, { opacity = 1, ...more }: ShaderMaterialParameters): Material {
  return new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    uniforms: { ball: { value: ball }, opacity: { value: opacity } },
    side: DoubleSide,
    clipping: true,
    toneMapped: false,
    ...more,
  });
}
