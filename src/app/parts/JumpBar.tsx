import "./jumpBar.css";
import { goToStation, type Station } from "../state/address.ts";
import { bringInSight } from "./bringInSight.ts";
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
  bringInSight(block, "start");
  if (place.tabIndex < 0) place.tabIndex = -1;
  place.focus({ preventScroll: true });
}
