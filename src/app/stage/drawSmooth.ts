import type { RootState } from "@react-three/fiber";
import {
  NoBlending,
  ShaderMaterial,
  SRGBColorSpace,
  Vector2,
  type WebGLRenderer,
  WebGLRenderTarget,
} from "three";
import { FullScreenQuad } from "three/addons/postprocessing/Pass.js";
import { drawStage } from "./drawStage.ts";

/** Looks taken at each pixel. */
const SAMPLES = 4;

/** Where a renderer draws a smooth picture, and what then lays it on the canvas. */
interface Smooth {
  readonly target: WebGLRenderTarget;
  readonly quad: FullScreenQuad;
}

const known = new WeakMap<WebGLRenderer, Smooth>();

// Leaf scratch.
const size = new Vector2();

/** Draws a frame as `drawStage` does, with smooth rims, onto a canvas that has none of its own. */
export function drawSmooth(state: Pick<RootState, "gl" | "scene" | "camera" | "size">): void {
  const { gl } = state;
  const { target, quad } = known.get(gl) ?? made(gl);
  gl.getDrawingBufferSize(size);
  target.setSize(size.x, size.y);
  drawStage(state, (scene, camera) => {
    gl.setRenderTarget(target);
    gl.render(scene, camera);
    gl.setRenderTarget(null);
    quad.render(gl);
  });
}

function made(gl: WebGLRenderer): Smooth {
  const target = new WebGLRenderTarget(1, 1, { samples: SAMPLES });
  // In the colors of the screen, as the canvas has them: veils mix as they do there.
  Object.assign(target, { isXRRenderTarget: true });
  target.texture.colorSpace = SRGBColorSpace;
  target.texture.internalFormat = "RGBA8";
  const quad = new FullScreenQuad(
    new ShaderMaterial({
      uniforms: { picture: { value: target.texture } },
      vertexShader: "void main() { gl_Position = vec4(position.xy, 0.0, 1.0); }",
      fragmentShader:
        "uniform sampler2D picture; void main() { gl_FragColor = texelFetch(picture, ivec2(gl_FragCoord.xy), 0); }",
      blending: NoBlending,
      depthTest: false,
      depthWrite: false,
      toneMapped: false,
    }),
  );
  const smooth = { target, quad };
  known.set(gl, smooth);
  return smooth;
}
