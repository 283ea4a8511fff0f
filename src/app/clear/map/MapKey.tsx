import { amountText } from "../../../studies/wording/lengths.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import type { DrawnMap } from "../../work/drawnMap.ts";
import { useAnswer } from "../../work/useAnswer.ts";

export type MapKeyProps = {
  truck: Truck;
  drawn: DrawnMap | null;
};

/** Limits named in the key before the rest is counted. */
const NAMED = 3;

/** Each once, whichever side's: `steering stop, droop strap and 2 more`. */
function limitNames(limits: readonly { readonly name: string }[]): string {
  const names = [...new Set(limits.map(({ name }) => name))];
  const rest = names.length - NAMED;
  return rest > 0 ? `${names.slice(0, NAMED).join(", ")} and ${rest} more` : names.join(", ");
}

/** What the map's tones, lines and hatchings mean. */
export function MapKey({ truck, drawn }: MapKeyProps) {
  const borders = drawn?.borders;
  const limits = drawn?.map.pastLimit?.limits;
  const isCutShort = drawn?.map.cutShort === true;
  const check = useAnswer("check", truck);
  // What rides with the wheel is as near everywhere: it has no cross.
  const isCrossed = check?.answer?.worst?.together !== true;
  const allowance = amountText(truck.setup.allowance, useFormat());
  return (
    <ul className="map-key">
      <li>
        <svg viewBox="0 0 22 12" aria-hidden="true">
          <rect className="map-rubs" width="22" height="12" />
          <rect fill="url(#map-hatch-rubs)" width="22" height="12" />
        </svg>
        rubs
      </li>
      <li>
        <svg viewBox="0 0 22 12" aria-hidden="true">
          <rect className="map-band map-band-0" width="22" height="12" />
          <path className="map-line-touch" d="M0 1.2H22" />
        </svg>
        under {allowance}
      </li>
      <li>
        <svg viewBox="0 0 22 12" aria-hidden="true">
          <rect className="map-band map-band-2" width="22" height="12" />
          <path className="map-line-allowance" d="M0 1.2H22" />
        </svg>
        clear; paler is farther
      </li>
      {isCrossed && (
        <li>
          <svg viewBox="0 0 22 12" aria-hidden="true">
            <path className="map-worst" d="M6 1L16 11M16 1L6 11" />
          </svg>
          {check?.isCut ? "worst so far" : "worst of all"}
        </li>
      )}
      {isCutShort && (
        <li>
          <svg viewBox="0 0 22 12" aria-hidden="true">
            <rect className="map-unreached" width="22" height="12" />
            <rect fill="url(#map-hatch-open)" width="22" height="12" />
          </svg>
          not looked at: the time allowed ran out
        </li>
      )}
      {limits && limits.length > 0 && (
        <li>
          <svg viewBox="0 0 22 12" aria-hidden="true">
            <rect fill="url(#map-hatch-limit)" width="22" height="12" />
            <path className="map-line-limit" d="M0 1.2H22" />
          </svg>
          past a limit: {limitNames(limits)}
        </li>
      )}
      {borders && borders.length > 0 && (
        <li>
          <svg viewBox="0 0 22 12" aria-hidden="true">
            <rect fill="url(#map-hatch-reach)" width="22" height="12" />
          </svg>
          out of reach: {borders.join(", ")}
        </li>
      )}
    </ul>
  );
}
