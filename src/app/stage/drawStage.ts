import type { RootState } from "@react-three/fiber";
import type { Camera, Object3D } from "three";
import { stageSettings } from "../state/stageSettings.ts";

/** Names of the groups that a wipe parts: what belongs to the truck shown, and to the other one. */
export const SHOWN = "shown";
export const BESIDE = "beside";

/**
 * Draws a frame: the whole truck, or under a wipe the other one on the left of it and the truck shown on the right.
 * @param render default straight onto the canvas
 */
export function drawStage(
  { gl, scene, camera, size }: Pick<RootState, "gl" | "scene" | "camera" | "size">,
  render: (scene: Object3D, camera: Camera) => void = (...shown) => gl.render(...shown),
): void {
  const shown = scene.getObjectByName(SHOWN);
  const beside = scene.getObjectByName(BESIDE);
  const { wipe } = stageSettings.getState();
  if (!shown || !beside || wipe === null) {
    render(scene, camera);
    return;
  }
  const at = Math.round(wipe * size.width);
  gl.setScissorTest(true);
  for (const isBeside of [true, false]) {
    const [from, to] = isBeside ? [0, at] : [at, size.width];
    if (from === to) continue;
    beside.visible = isBeside;
    shown.visible = !isBeside;
    gl.setScissor(from, 0, to - from, size.height);
    render(scene, camera);
  }
  gl.setScissorTest(false);
  [shown.visible, beside.visible] = [true, false];
}
