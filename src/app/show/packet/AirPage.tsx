import type { AirSpringSetup } from "../../../setup/types/airTypes.ts";
import { airStateAt } from "../../../studies/air/airState.ts";
import { allowedSentence } from "../../../studies/wording/airWords.ts";
import { AIR_CAUTIONS } from "../../../studies/wording/cautions.ts";
import { AirTable } from "../../clear/air/AirTable.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";

/** The left air spring at each stance. */
export function AirPage({ truck: { setup, model }, spring }: { truck: Truck; spring: AirSpringSetup }) {
  const format = useFormat();
  const heights = setup.stances.length > 0 ? setup.stances : [{ name: "as measured", travel: 0 }];
  const rows = heights.map(({ name, travel }) => ({
    ...{ name, travel: null },
    state: airStateAt(model, "left", travel),
  }));
  return (
    <>
      <AirTable
        caption="Air spring at each stance, left side"
        {...{ rows, spring, format }}
        units={setup.units}
      />
      <p>{allowedSentence(spring, setup.units, format)}</p>
      <p className="packet-caution">{AIR_CAUTIONS}</p>
    </>
  );
}
