import { floorAt } from "../../../studies/floor/floorAt.ts";
import { stanceMeasures } from "../../../studies/stances/stanceMeasures.ts";
import { FLOOR_CAUTIONS } from "../../../studies/wording/cautions.ts";
import { belowWords, clearanceText } from "../../../studies/wording/floorWords.ts";
import { angleText } from "../../../studies/wording/lengths.ts";
import { lipName, travelText } from "../../../studies/wording/poseWords.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";

/** Each stance by everything a shop reads it by, and what hangs lowest there. */
export function FloorPage({ truck: { setup, model } }: { truck: Truck }) {
  const format = useFormat();
  const heights = setup.stances.length > 0 ? setup.stances : [{ name: "as measured", travel: 0 }];
  const height = (mm: number | null | undefined) =>
    mm == null ? "–" : keepTogether(clearanceText(mm, format));
  const rows = heights.map(({ name, travel }) => {
    const clearances = floorAt(model, { left: travel, right: travel }, 0)?.clearances ?? [];
    const [lowest] = [...clearances].sort((a, b) => a.clearance - b.clearance);
    return { name, travel, found: stanceMeasures(model, travel), lowest };
  });
  // What the setup does not say is no column of dashes.
  const hasLip = rows.some(({ found }) => found?.lipHeight != null);
  const hasFrame = rows.some(({ found }) => found?.frameHeight != null);
  const hasLowest = rows.some(({ lowest }) => lowest !== undefined);
  return (
    <>
      <table>
        <thead>
          <tr>
            <th scope="col">Stance</th>
            <th scope="col">Wheel travel</th>
            <th scope="col">Lower arm, + joint below pivots</th>
            {hasLip && <th scope="col">Floor to {lipName(setup)}</th>}
            {hasFrame && <th scope="col">Floor to frame</th>}
            {hasLowest && <th scope="col">Lowest above the floor</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, travel, found, lowest }) => {
            return (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{keepTogether(travelText(travel, format))}</td>
                <td>{found ? angleText(found.lowerArmAngle) : "out of reach"}</td>
                {hasLip && <td>{height(found?.lipHeight)}</td>}
                {hasFrame && <td>{height(found?.frameHeight)}</td>}
                {hasLowest && (
                  <td>
                    {lowest === undefined
                      ? "–"
                      : `${lowest.name}, ${
                          lowest.clearance < 0
                            ? `in the floor by ${belowWords(lowest.clearance, format)}`
                            : keepTogether(clearanceText(lowest.clearance, format))
                        }`}
                  </td>
                )}
              </tr>
            );
          })}
        </tbody>
      </table>
      <p className="packet-caution">{FLOOR_CAUTIONS}</p>
    </>
  );
}
