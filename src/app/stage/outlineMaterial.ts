import { BackSide, NoBlending, ShaderMaterial, type Vector2 } from "three";

const VERTEX = `
uniform vec2 viewSize;
uniform float width;
#include <clipping_planes_pars_vertex>
void main() {
  vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
  #include <clipping_planes_vertex>
  vec4 clip = projectionMatrix * mvPosition;
  vec2 away = (normalMatrix * normal).xy;
  float reach = length(away);
  if (reach > 1e-4) clip.xy += away / reach * width * 2.0 / viewSize * clip.w;
  gl_Position = clip;
}`;

const FRAGMENT = `
uniform vec3 ink;
uniform float dash;
#include <clipping_planes_pars_fragment>
void main() {
  #include <clipping_planes_fragment>
  if (dash > 0.0 && mod(gl_FragCoord.x + gl_FragCoord.y, 2.0 * dash) > dash) discard;
  gl_FragColor = vec4(ink, 1.0);
  #include <colorspace_fragment>
}`;

/**
 * Draws the silhouette of a solid as an ink line of even width: the solid's far faces, grown outward on the
 * screen, show only where they stick out from behind it.
 * @param viewSize shared, CSS pixels, kept up to date by its owner; @param width of the line, CSS pixels
 * @param dash of a line that is dashed on the screen, pixels; default 0, drawn through
 */
export function outlineMaterial(
  color: { r: number; g: number; b: number },
  viewSize: Vector2,
  width: number,
  dash = 0,
) {
  return new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    uniforms: {
      ink: { value: color },
      viewSize: { value: viewSize },
      width: { value: width },
      dash: { value: dash },
    },
    side: BackSide,
    clipping: true,
    // Not for its color: it takes its turn among the layers of veils (see `Solid`).
    transparent: true,
    blending: NoBlending,
  });
}
