import { useFrame, useThree } from "@react-three/fiber";
import { useEffect, useRef } from "react";
import { whenKeysRest } from "../parts/keysAtRest.ts";
import type { Rims } from "./drawing.ts";
import { drawSmooth } from "./drawSmooth.ts";
import { drawStage } from "./drawStage.ts";

export type FrameDrawerProps = {
  rims: Rims;
};

/** ms without a frame after which nothing moves any more. */
const REST = 180;

/** Draws each frame that is asked for; where rims are smooth at rest alone, once more when nothing has moved for a moment. */
export function FrameDrawer({ rims }: FrameDrawerProps) {
  const get = useThree((s) => s.get);
  const callOff = useRef<() => void>(() => undefined);
  useEffect(() => () => callOff.current(), []);
  // A frame of its own: with a priority nothing else draws.
  useFrame((state) => {
    drawStage(state);
    if (rims !== "at rest") return;
    callOff.current();
    const timer = setTimeout(() => {
      callOff.current = whenKeysRest(() => {
        const frame = requestAnimationFrame(() => {
          // A frame asked for is drawn next, and something moves still: frames can be farther apart than a moment.
          if (get().internal.frames === 0) drawSmooth(get());
        });
        callOff.current = () => cancelAnimationFrame(frame);
      });
    }, REST);
    callOff.current = () => clearTimeout(timer);
  }, 1);
  return null;
}
