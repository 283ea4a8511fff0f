import { type TouchEvent, useRef } from "react";

/** Pixels that a finger goes before it is a swipe, and how much more across than along. */
const FAR = 60;
const ACROSS = 2;

/** A finger that wipes across goes on, or back; along, the page scrolls as ever. */
export function useSwipe(onSwipe: (way: "next" | "previous") => void) {
  const start = useRef<{ readonly x: number; readonly y: number } | null>(null);
  return {
    onTouchStart: ({ touches }: TouchEvent) => {
      const touch = touches[0];
      start.current = touch && touches.length === 1 ? { x: touch.clientX, y: touch.clientY } : null;
    },
    onTouchEnd: ({ changedTouches }: TouchEvent) => {
      const touch = changedTouches[0];
      const from = start.current;
      start.current = null;
      if (!touch || !from) return;
      const [x, y] = [touch.clientX - from.x, touch.clientY - from.y];
      if (Math.abs(x) > FAR && Math.abs(x) > ACROSS * Math.abs(y)) onSwipe(x < 0 ? "next" : "previous");
    },
  };
}
