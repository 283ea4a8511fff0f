import { bringTo } from "./bring.ts";

/** ms in which what was folded is there. */
const FILLS_WITHIN = 1500;
const HANDS = ["wheel", "pointerdown", "keydown"] as const;

/**
 * Scrolls a block in sight, and again while it fills: before, the page may be too short to get there. A hand ends it.
 * @param to `start` = to the top; `nearest`, the default, = no farther than it takes, and what is higher than the window to the top
 */
export function bringInSight(block: HTMLElement, to: "start" | "nearest" = "nearest"): void {
  const bring = () => {
    if (to === "start") bringTo(block, to);
    else block.scrollIntoView({ block: to });
  };
  const fills = new ResizeObserver(bring);
  const end = () => {
    fills.disconnect();
    clearTimeout(timer);
    for (const hand of HANDS) removeEventListener(hand, end);
  };
  const timer = setTimeout(end, FILLS_WITHIN);
  fills.observe(block);
  for (const hand of HANDS) addEventListener(hand, end);
  bring();
}
