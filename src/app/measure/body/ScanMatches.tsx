import { useEffect, useState } from "react";
import type { Vec3 } from "../../../geometry/vec.ts";
import { type KeyPath, keyText, valueAt } from "../../../setup/types/keyPath.ts";
import type { Point } from "../../../setup/types/truckTypes.ts";
import type { MatchedPoint } from "../../../studies/measure/scanOnPoints.ts";
import { matchesSentence, matchOffText, PICK_TEXTS } from "../../../studies/wording/gaugeWords.ts";
import { matchesOf, matchOff, placed } from "../../../studies/worksheet/scanFit.ts";
import { axesOf, measuredView } from "../../state/measuredView.ts";
import { askForPress, type TruckPlace } from "../../state/scanPick.ts";
import { lengthFormat, shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { PointFields } from "../points/PointFields.tsx";
import { fitScan, inFile } from "./placeScan.ts";
import { pointInUnits, type ScanOnBoard } from "./scanOnBoard.ts";
import { truckPlaces } from "./truckPlaces.ts";

export type ScanMatchesProps = {
  /** Of the body part. */
  path: KeyPath;
  truck: Truck;
  /** null while the mesh is not on the truck shown: nothing can be pressed. */
  scan: ScanOnBoard | null;
};

/** Points seen on a scan and on the truck: pressed on the stage or typed, then fitted by least squares. */
export function ScanMatches({ path, truck, scan }: ScanMatchesProps) {
  const matched = [...path, "place", "matched"];
  const document = useWorkbench(shownDocument);
  const format = useWorkbench(lengthFormat);
  const units = fileUnitsOf(document);
  const [refused, setRefused] = useState<string | null>(null);
  const list = valueAt(document, matched);
  const pairs: readonly unknown[] = Array.isArray(list) ? list : [];
  const whole = matchesOf(document, path, units);
  const offs = whole.map((match) => (match && scan ? matchOff(scan.standing, match) : null));
  const known = offs.filter((off) => off !== null);
  const { editField, insertItem, removeItem } = workbench.getState();
  useMatchesOnStage(truck, matched, whole, offs);
  return (
    <div className="scan-matches">
      {pairs.map((pair, i) => (
        <section
          // biome-ignore lint/suspicious/noArrayIndexKey: a match is its place in the list
          key={i}
          className="part-block"
          aria-label={`Point ${i + 1}`}
        >
          <h5>
            Point {i + 1} <small>{matchOffText(offs[i] ?? null, format)}</small>
          </h5>
          <Half
            path={[...matched, i, "inMesh"]}
            isThere={valueAt(pair, ["inMesh"]) !== undefined}
            name={`Point ${i + 1} in the mesh`}
            pick={
              scan && {
                label: "Pick on the scan",
                ask: () =>
                  askForPress({
                    on: "scan",
                    part: scan.index,
                    words: PICK_TEXTS.scan(`point ${i + 1}`),
                    marks: whole.flatMap((match, k) =>
                      match && k !== i
                        ? [{ name: String(k + 1), at: placed(scan.standing, match.inScan) }]
                        : [],
                    ),
                    take: (hit) =>
                      editField(
                        [...matched, i, "inMesh"],
                        inFile(scan.mesh, hit).map((one) => Number(one.toPrecision(7))),
                      ),
                  }),
              }
            }
          />
          <Half
            path={[...matched, i, "onTruck"]}
            isThere={valueAt(pair, ["onTruck"]) !== undefined}
            name={`Point ${i + 1} on the truck`}
            pick={{
              label: "Pick on the truck",
              ask: () =>
                askForPress({
                  on: "truck",
                  words: PICK_TEXTS.truck(`point ${i + 1}`),
                  places: placesFor(truck, scan),
                  take: ({ at }) => editField([...matched, i, "onTruck"], pointInUnits(at, units)),
                }),
            }}
            places={placesFor(truck, scan)}
            onPlace={(at) => editField([...matched, i, "onTruck"], pointInUnits(at, units))}
          />
          <button type="button" className="small-button" onClick={() => removeItem(matched, i)}>
            Remove point {i + 1}
          </button>
        </section>
      ))}
      <div className="row-tools">
        <button type="button" className="small-button" onClick={() => insertItem(matched, pairs.length, {})}>
          Add a point
        </button>
        <button
          type="button"
          className="button"
          disabled={whole.filter(Boolean).length < 3}
          onClick={() => setRefused(fitScan(path))}
        >
          Put the scan on these points
        </button>
      </div>
      <p className="part-note" role="status">
        {refused ?? matchesSentence(known, format)}
      </p>
    </div>
  );
}

/** mm. A scan farther off its points has not been put on them yet: a ball as large would hide the truck. */
const FITTED = 100;

/**
 * Has the stage draw, as long as this is shown, how far each place on the truck may be from where it was put: by what is typed
 * beside its numbers, else as far as the scan's own point comes out from it, which then lies on the ball drawn.
 */
function useMatchesOnStage(
  { setup }: Truck,
  matched: KeyPath,
  whole: readonly (MatchedPoint | null)[],
  offs: readonly (number | null)[],
): void {
  const format = useWorkbench(lengthFormat);
  const typed = new Map(setup.within.map(({ path, within }) => [keyText(path), within]));
  const told = whole.flatMap((match, i) => {
    const off = offs[i];
    if (!match || off === null || off === undefined || off > FITTED) return [];
    const within = [0, 1, 2].map(
      (axis) => typed.get(keyText([...matched, i, "onTruck", axis])) ?? 0,
    ) as unknown as Vec3;
    const isTyped = within.some((one) => one > 0);
    const name = `${i + 1}: ${matchOffText(off, format)}`;
    return [
      {
        name,
        at: match.onTruck,
        isAssumed: false,
        isTyped,
        axes: axesOf(isTyped ? within : [off, off, off]),
      },
    ];
  });
  const key = JSON.stringify(told);
  const place = keyText(matched);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what it says is what it is
  useEffect(() => {
    const put = (points: typeof told) =>
      measuredView.setState((s) => ({ matched: { ...s.matched, [place]: points } }));
    put(told);
    return () => put([]);
  }, [key, place]);
}

type HalfProps = {
  path: KeyPath;
  isThere: boolean;
  name: string;
  pick: { readonly label: string; readonly ask: () => void } | null;
  /** What it may be chosen from by name. Default nothing. */
  places?: readonly TruckPlace[];
  onPlace?: (at: Point) => void;
};

/** A point of the mesh or of the truck: pressed on the stage, chosen by its name, or typed. */
function Half({ path, isThere, name, pick, places = [], onPlace }: HalfProps) {
  const { editField } = workbench.getState();
  return (
    <>
      {isThere && <PointFields caption={name} rowHead="" rows={[{ label: name, path }]} />}
      <div className="row-tools">
        {pick && (
          <button
            type="button"
            className="small-button"
            onClick={pick.ask}
            aria-label={`${pick.label}: ${name}`}
          >
            {pick.label}
          </button>
        )}
        {onPlace && (
          <select
            className="field-choice"
            aria-label={`${name}, by its name`}
            value=""
            onChange={({ target }) => {
              const place = places[Number(target.value)];
              if (place) onPlace(place.at);
            }}
          >
            <option value="">by its name…</option>
            {places.map((place, i) => (
              <option key={place.name} value={i}>
                {place.name}
              </option>
            ))}
          </select>
        )}
        {!isThere && (
          <button type="button" className="small-button" onClick={() => editField(path, [0, 0, 0])}>
            Type {name.charAt(0).toLowerCase() + name.slice(1)}
          </button>
        )}
      </div>
    </>
  );
}

function placesFor(truck: Truck, scan: ScanOnBoard | null): readonly TruckPlace[] {
  const places = truckPlaces(truck);
  if (scan?.part.side !== "right") return places;
  return places.map(({ name, at: [x, y, z] }) => ({ name: `right ${name}`, at: [x, -y, z] }));
}
