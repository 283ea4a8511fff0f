import { useEffect } from "react";
import { useStation } from "../state/address.ts";
import { setStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { firstDocumentId, workbench } from "../state/workbench.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";
import { work } from "../work/work.ts";
import { worstOf } from "./worst.ts";

/** ms from where the truck drives to its worst pose. */
const TAKES = 2000;

/** Documents that were played, or opened so that they are not to be. */
const settled = new Set<string>();

/** Whatever somebody does with the page before or while it plays. */
const HANDS = ["pointerdown", "keydown", "wheel"] as const;

/** What poses the truck from where it is. */
const POSING = ".pose-controls, .map-board, .plot-tile";

/**
 * Where a hand on the page leaves the truck: null = where it is, for what poses it itself; else the place it was going to.
 * @param going null = it does not play yet
 */
export function poseAfterHand(
  going: { readonly travel: number; readonly steer: number } | null,
  isPosing: boolean,
): { readonly travel: number; readonly steer: number } | null {
  return isPosing ? null : going;
}

/**
 * Whether what is on the board is an example as it came, at the height it drives at. A truck that was worked on before, one
 * of somebody's own and one that was shared are not: they stand as they were left.
 */
export function isFreshExample(state: WorkbenchState): boolean {
  const { truck, document, documentId, saved, travel, steer } = state;
  if (truck?.setup.fromExample == null || document === null) return false;
  return saved[documentId] === document && travel === 0 && steer === 0;
}

/**
 * Whether it is played: what was on the board before this page drew anything is fresh only where the page put it there itself.
 * @param isStill motion is to be reduced @param isKnown the page put it there
 */
export function isPlayed(state: WorkbenchState, isKnown: boolean, isStill: boolean): boolean {
  return isKnown && !isStill && isFreshExample(state);
}

/** How far along the way it is after a share of the time: starts and ends gently. */
export function eased(share: number): number {
  const t = Math.min(1, Math.max(0, share));
  return t * t * (3 - 2 * t);
}

/**
 * On an example that is seen for the first time, plays the truck once from where it drives to its worst pose, and leaves it
 * there. Any hand on the page puts it there at once, but for one on what poses it, which takes it over as it is; and where motion is
 * to be reduced nothing moves.
 * @param isDrawn the picture is there
 */
export function useFirstPlay(truck: Truck, isDrawn: boolean): void {
  const isSeen = useStation() === "clear";
  useEffect(() => {
    const opened = workbench.getState();
    const { documentId } = opened;
    if (settled.has(documentId)) return;
    const isKnown = settled.size > 0 || documentId === firstDocumentId;
    const isStill = matchMedia("(prefers-reduced-motion: reduce)").matches;
    if (!isPlayed(opened, isKnown, isStill)) {
      settled.add(documentId);
      return;
    }
    if (!isSeen || !isDrawn || opened.truck !== truck) return;

    let frame = 0;
    let start: number | null = null;
    let shown = { travel: 0, steer: 0 };
    const stop = () => {
      settled.add(documentId);
      cancelAnimationFrame(frame);
      setStage({ isShownOnce: false });
      leave();
    };
    let going: { readonly travel: number; readonly steer: number } | null = null;
    const onHand = ({ target }: Event) => {
      const left = poseAfterHand(going, target instanceof Element && target.closest(POSING) !== null);
      stop();
      if (left) workbench.getState().setPose(left.travel, left.steer);
    };
    const begin = () => {
      const worst = worstOf(truck);
      if (worst === null || frame !== 0) return;
      settled.add(documentId);
      if (worst.together === true) return stop();
      going = worst;
      setStage({ isShownOnce: true });
      frame = requestAnimationFrame(function next(now) {
        start ??= now;
        const share = (now - start) / TAKES;
        shown = { travel: eased(share) * worst.travel, steer: eased(share) * worst.steer };
        workbench.getState().setPose(shown.travel, shown.steer);
        if (share < 1) frame = requestAnimationFrame(next);
        else stop();
      });
    };
    const unfollowWork = work.subscribe(begin);
    const unfollow = workbench.subscribe((now) => {
      const isMoved = Math.abs(now.travel - shown.travel) > 1e-6 || Math.abs(now.steer - shown.steer) > 1e-6;
      if (isMoved || now.truck !== truck) stop();
    });
    for (const hand of HANDS) addEventListener(hand, onHand, { capture: true, passive: true });
    const leave = () => {
      unfollowWork();
      unfollow();
      for (const hand of HANDS) removeEventListener(hand, onHand, { capture: true });
    };
    begin();
    return () => {
      cancelAnimationFrame(frame);
      setStage({ isShownOnce: false });
      leave();
    };
  }, [truck, isSeen, isDrawn]);
}
