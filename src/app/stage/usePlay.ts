import { useEffect } from "react";
import { setStage, useStage } from "../state/stageSettings.ts";
import { workbench } from "../state/workbench.ts";

/**
 * A value that goes from where it is to `high`, back to `low`, and so on, evenly.
 * @param start within low … high; @param ways how many whole ways it has gone since
 */
export function sweepValue(low: number, high: number, start: number, ways: number): number {
  if (!(high > low)) return low;
  const phase = ((start - low) / (high - low) + ways) % 2;
  return low + (high - low) * (phase <= 1 ? phase : 2 - phase);
}

/** ms from one end to the other; where motion is to be reduced it goes in steps instead, so many a way. */
const WAY = 3200;
const STEPS = 8;
const STEP_EVERY = 900;

/** Plays the height or the steering while the stage says so; whoever moves the truck meanwhile stops it. */
export function usePlay(): void {
  const play = useStage((s) => s.play);
  useEffect(() => {
    if (play === null) return;
    const { truck, travel, steer } = workbench.getState();
    if (truck === null) return;
    const { droop, bump } = truck.setup.travel;
    const [low, high] = play === "travel" ? [droop, bump] : [-1, 1];
    const start = play === "travel" ? travel : steer;
    let [setTravel, setSteer] = [travel, steer];
    const show = (ways: number) => {
      const value = sweepValue(low, high, start, ways);
      if (play === "travel") setTravel = value;
      else setSteer = value;
      workbench.getState().setPose(setTravel, setSteer);
    };
    const stop = () => setStage({ play: null });
    const unfollow = workbench.subscribe((now) => {
      const isMoved = Math.abs(now.travel - setTravel) > 1e-6 || Math.abs(now.steer - setSteer) > 1e-6;
      if (isMoved || now.truck !== truck) stop();
    });
    let cancel: () => void;
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) {
      let count = 0;
      const timer = setInterval(() => show(++count / STEPS), STEP_EVERY);
      cancel = () => clearInterval(timer);
    } else {
      let from: number | null = null;
      let frame = requestAnimationFrame(function next(now) {
        from ??= now;
        show((now - from) / WAY);
        frame = requestAnimationFrame(next);
      });
      cancel = () => cancelAnimationFrame(frame);
    }
    return () => {
      unfollow();
      cancel();
    };
  }, [play]);
}
