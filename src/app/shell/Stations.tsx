import "./stations.css";
import { type MouseEvent, useId } from "react";
import { goToStation, STATIONS, type Station, useStation } from "../state/address.ts";

/** What each is called, and what is done there. */
const WORDS: Readonly<Record<Station, readonly [name: string, what: string]>> = {
  measure: ["Measure", "get the truck in"],
  clear: ["Clear", "will it clear?"],
  choose: ["Choose", "what to change"],
  build: ["Build", "the knuckle itself"],
  show: ["Show", "for the customer"],
};

/** What a station is called, with what is done there. */
export function stationTitle(station: Station): string {
  return WORDS[station].join(": ");
}

/** The steps of the job along the top, on a phone at the thumb; each keeps the same truck and answer. */
export function Stations() {
  const shown = useStation();
  const id = useId();
  return (
    <nav className="stations" aria-label="Steps of the job">
      <ol>
        {STATIONS.map((station, i) => {
          const [name, what] = WORDS[station];
          return (
            <li key={station}>
              <a
                href={`#${station}`}
                className="station-link"
                aria-current={station === shown ? "page" : undefined}
                aria-describedby={`${id}-${station}`}
                onClick={(event) => go(event, station)}
              >
                <span className="station-number" aria-hidden="true">
                  {i + 1}
                </span>
                {name}
              </a>
              <span id={`${id}-${station}`} className="station-what">
                {what}
              </span>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}

/**
 * As the link would: the page starts at its top, and the keyboard goes on in the station. A link opened elsewhere stays
 * the browser's.
 */
function go(event: MouseEvent, station: Station): void {
  if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
  event.preventDefault();
  goToStation(station);
  scrollTo({ top: 0 });
  document.querySelector("main")?.focus({ preventScroll: true });
}
