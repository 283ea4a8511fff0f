import { useEffect, useState, useSyncExternalStore } from "react";

/** Seconds from straight ahead to one lock, to the other and back. */
const SECONDS = 14;
/** Milliseconds between two pictures: as often as a slow machine draws them. */
const EVERY = 40;

const STILL = "(prefers-reduced-motion: reduce)";

/**
 * Steers slowly from lock to lock while it plays, once round. Nobody who asked for little motion is offered it.
 * @param steerTo told the share of lock, −1 … +1, + = left; the same function each time
 */
export function useSteering(steerTo: (steer: number) => void) {
  const [isPlaying, setPlaying] = useState(false);
  const canPlay = !useSyncExternalStore(follow, () => matchMedia(STILL).matches);
  useEffect(() => {
    if (!isPlaying) return;
    const start = performance.now();
    let last = -Infinity;
    let frame = requestAnimationFrame(function draw(now) {
      const share = (now - start) / (1000 * SECONDS);
      if (share >= 1) {
        steerTo(0);
        setPlaying(false);
        return;
      }
      if (now - last >= EVERY) {
        last = now;
        steerTo(Math.sin(2 * Math.PI * share));
      }
      frame = requestAnimationFrame(draw);
    });
    return () => cancelAnimationFrame(frame);
  }, [isPlaying, steerTo]);
  return {
    isPlaying: isPlaying && canPlay,
    canPlay,
    play: () => setPlaying(true),
    stop: () => setPlaying(false),
  };
}

function follow(listener: () => void): () => void {
  const asked = matchMedia(STILL);
  asked.addEventListener("change", listener);
  return () => asked.removeEventListener("change", listener);
}
