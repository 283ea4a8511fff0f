import type { Truck } from "../state/truck.ts";
import { useFormat } from "../state/useFormat.ts";
import { amountText } from "../words/amountText.ts";
import { useMap } from "./useMap.ts";

export type MapKeyProps = {
  truck: Truck;
};

/** What the map's tones, lines and hatchings mean. */
export function MapKey({ truck }: MapKeyProps) {
  const borders = useMap((s) => s.drawn?.borders);
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
      <li>
        <svg viewBox="0 0 22 12" aria-hidden="true">
          <path className="map-worst" d="M6 1L16 11M16 1L6 11" />
        </svg>
        worst of all
      </li>
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
