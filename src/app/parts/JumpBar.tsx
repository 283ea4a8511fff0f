import "./jumpBar.css";
import { goToStation, type Station } from "../state/address.ts";
import { whenThere } from "./whenThere.ts";

export type JumpBarProps = {
  /** What each place is called, and its heading or what opens it (a selector). */
  places: readonly (readonly [name: string, selector: string])[];
};

/** Ways to what lies below the screen at a station. */
export function JumpBar({ places }: JumpBarProps) {
  return (
    <nav className="jump-bar" aria-label="On this page">
      <span className="jump-word">On this page:</span>
      {places.map(([name, selector]) => (
        <button key={name} type="button" className="jump" onClick={() => goTo(selector)}>
          {name}
        </button>
      ))}
    </nav>
  );
}

/** Goes to a place of a station, wherever somebody is. */
export function jumpTo(station: Station, selector: string): void {
  goToStation(station);
  whenThere(
    () => document.querySelector<HTMLElement>(selector),
    () => goTo(selector),
  );
}

/** The keyboard goes on from there, as after a link. */
function goTo(selector: string): void {
  const place = document.querySelector<HTMLElement>(selector);
  if (!place) return;
  const block = place.closest<HTMLElement>("section, details") ?? place;
  if (block instanceof HTMLDetailsElement) block.open = true;
  bringToTop(block);
  if (place.tabIndex < 0) place.tabIndex = -1;
  place.focus({ preventScroll: true });
}

/** ms in which what was folded is there. */
const FILLS_WITHIN = 1500;
const HANDS = ["wheel", "pointerdown", "keydown"] as const;

/** Scrolls a block to the top, and again while it fills: before, the page may be too short to get there. A hand ends it. */
function bringToTop(block: HTMLElement): void {
  const bring = () => block.scrollIntoView({ block: "start" });
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
