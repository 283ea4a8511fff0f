import "./mapPanel.css";
import { useState } from "react";
import { CutShort } from "../../parts/CutShort.tsx";
import { reportFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import type { Truck } from "../../state/truck.ts";
import type { MapSideName } from "../../work/drawnMap.ts";
import { useAnswer, useLastAnswer } from "../../work/useAnswer.ts";
import { MapBoard } from "./MapBoard.tsx";
import { MapKey } from "./MapKey.tsx";

export type MapPanelProps = {
  truck: Truck;
};

const SIDES: readonly { readonly name: MapSideName; readonly label: string }[] = [
  { name: "both", label: "Worse wheel" },
  { name: "left", label: "Left" },
  { name: "right", label: "Right" },
];

/** Every height against every steering angle: where it clears, where it rubs, and the pose shown as a dot to drag. */
export function MapPanel({ truck }: MapPanelProps) {
  const [side, setSide] = useState<MapSideName>("both");
  const map = useAnswer("map", truck);
  const drawn = useLastAnswer(map);
  return (
    <section className="map" aria-labelledby="map-title">
      <header className="map-head">
        <h2 id="map-title" className="label">
          Height and steering: drag the dot
        </h2>
        <fieldset className="map-sides">
          <legend className="sr-only">Whose gaps</legend>
          {SIDES.map(({ name, label }) => (
            <button
              key={name}
              type="button"
              className="map-side"
              aria-pressed={side === name}
              onClick={() => setSide(name)}
            >
              {label}
            </button>
          ))}
        </fieldset>
        <SaveMenu
          of="the map"
          files={[
            reportFile(truck, { of: "map" }, "The map"),
            reportFile(truck, { of: "map csv" }, "The map"),
            reportFile(truck, { of: "check" }, "The check of every pose"),
          ]}
        />
      </header>
      {map?.failure ? (
        <p role="alert">The map could not be worked out: {map.failure}</p>
      ) : (
        <MapBoard truck={truck} drawn={drawn} isStale={map?.answer === null} side={side} />
      )}
      {map && <CutShort study="picture" of={[map]} />}
      <MapKey truck={truck} drawn={drawn} />
    </section>
  );
}
