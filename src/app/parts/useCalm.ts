import { useRef } from "react";
import { useStore } from "zustand";
import { pointerHeld } from "../state/pointerHeld.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";

/** A truck as it was before the gesture that is under way: what would come, go or wrap anew waits for the end of a drag. */
export function useCalm<T extends Truck | null>(truck: T): T {
  const isGesturing = useWorkbench((s) => s.isGesturing);
  const calm = useRef(truck);
  if (!isGesturing) calm.current = truck;
  return calm.current;
}

/** A value as it was before the pointer began to drag what it is told of: where it would push the page about under the hand. */
export function useStill<T>(value: T): T {
  const isGesturing = useWorkbench((s) => s.isGesturing);
  const isHeld = useStore(pointerHeld, (s) => s.isHeld);
  const still = useRef(value);
  if (!(isGesturing && isHeld)) still.current = value;
  return still.current;
}
