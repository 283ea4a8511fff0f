import "../../clear/map/mapPanel.css";
import { STILL_WORKING } from "../../../studies/wording/packetTexts.ts";
import { MapHatches } from "../../clear/map/MapHatches.tsx";
import { MapKey } from "../../clear/map/MapKey.tsx";
import { MapPicture } from "../../clear/map/MapPicture.tsx";
import { MapScales } from "../../clear/map/MapScales.tsx";
import { MapWorst } from "../../clear/map/MapWorst.tsx";
import { MAP_BOX, mapFrameOf } from "../../clear/map/mapFrame.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import type { Answered } from "../../work/answerCache.ts";

/** The map of the worse wheel, to be looked at. */
export function MapPage({ truck, map }: { truck: Truck; map: Answered<"map"> }) {
  const format = useFormat();
  const { setup } = truck;
  const drawn = map.answer;
  if (drawn === null) return <p>{map.failure ?? STILL_WORKING}</p>;
  const frame = mapFrameOf(setup.travel.droop, setup.travel.bump);
  return (
    <>
      <p>Every height against every steering angle, the worse wheel of the two.</p>
      <svg
        className="packet-map"
        viewBox={`0 0 ${MAP_BOX.width} ${MAP_BOX.height}`}
        role="img"
        aria-label="Map of height and steering"
      >
        <MapHatches />
        <MapPicture drawn={drawn} side="both" frame={frame} allowance={setup.allowance} />
        <MapScales setup={setup} frame={frame} format={format} />
        <MapWorst truck={truck} frame={frame} side="both" />
      </svg>
      <MapKey truck={truck} drawn={drawn} />
    </>
  );
}
