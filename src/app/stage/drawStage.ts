import type { RootState } from "@react-three/fiber";
import { stageSettings } from "../state/stageSettings.ts";

/** Names of the groups that a wipe parts: what belongs to the truck shown, and to the other one. */
export const SHOWN = "shown";
export const BESIDE = "beside";

/** Draws a frame: the whole truck, or under a wipe the other one on the left of it and the truck shown on the right. */
export function drawStage({
  gl,
  scene,
  camera,
  size,
}: Pick<RootState, "gl" | "scene" | "camera" | "size">): void {
  const shown = scene.getObjectByName(SHOWN);
  const beside = scene.getObjectByName(BESIDE);
  const { wipe } = stageSettings.getState();
  if (!shown || !beside || wipe === null) {
    gl.render(scene, camera);
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
    gl.render(scene, camera);
  }
  gl.setScissorTest(false);
  [shown.visible, beside.visible] = [true, false];
}
