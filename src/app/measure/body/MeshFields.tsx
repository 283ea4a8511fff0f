import { useMemo } from "react";
import { isWithin, type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { standsAsTyped } from "../../../studies/section/placedBody.ts";
import { MESH_UNPLACED, MESH_WITHIN } from "../../../studies/wording/gaugeWords.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldRow } from "../fields/FieldRow.tsx";
import { OptionalBlock } from "../fields/OptionalBlock.tsx";
import { WaySwitch } from "../fields/WaySwitch.tsx";
import { PointFields } from "../points/PointFields.tsx";
import { PointList } from "../points/PointList.tsx";
import { matchFrom } from "./placeScan.ts";
import { ScanFit } from "./ScanFit.tsx";
import { ScanMatches } from "./ScanMatches.tsx";
import { ScanNudge } from "./ScanNudge.tsx";
import { ScanPoints } from "./ScanPoints.tsx";
import { ScanUnit } from "./ScanUnit.tsx";
import { scanOnBoard } from "./scanOnBoard.ts";

export type MeshFieldsProps = { path: KeyPath; truck: Truck };

type Way = (typeof WAYS)[number]["way"];

const CORNERS = ["1st", "2nd", "3rd"] as const;
const WAYS = [
  { way: "matched", label: "by matched points" },
  { way: "numbers", label: "by turn and move" },
  { way: "points", label: "by three points" },
] as const;

/** A surface: points and triangles in the setup itself, or a mesh file and where it stands. */
export function MeshFields({ path, truck }: MeshFieldsProps) {
  const isFile = useWorkbench((s) => valueAt(shownDocument(s), [...path, "file"]) !== undefined);
  if (isFile) return <MeshFileFields path={path} truck={truck} />;
  return (
    <>
      <h5>Corners of the triangles</h5>
      <PointList path={[...path, "vertices"]} caption="Corners of the triangles" least={3} />
      <h5>Triangles, by numbers of corners counted from 0</h5>
      <PointList
        path={[...path, "triangles"]}
        caption="Triangles, by numbers of corners counted from 0"
        columns={CORNERS}
        least={1}
        copies
      />
    </>
  );
}

function MeshFileFields({ path, truck }: MeshFieldsProps) {
  const place = [...path, "place"];
  const way = useWorkbench((s): Way => {
    const there = valueAt(shownDocument(s), place);
    if (valueAt(there, ["matched"]) !== undefined) return "matched";
    const isByThree = valueAt(there, ["from"]) !== undefined || valueAt(there, ["to"]) !== undefined;
    return isByThree ? "points" : "numbers";
  });
  const isUnplaced = useWorkbench((s) => valueAt(shownDocument(s), place) === undefined);
  // The truck shown, not what is being typed, tells where the mesh stands.
  const document = useWorkbench((s) => s.good?.document);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the truck is what it stands on, and the path is a new list each time
  const scan = useMemo(
    () => (document ? scanOnBoard(workbench.getState(), path) : null),
    [truck, document, path.join(".")],
  );
  const { editField, removeField } = workbench.getState();
  const give = (wanted: Way) => {
    if (wanted === "matched") matchFrom(path);
    else if (wanted === "points") editField(place, { from: THREE_POINTS, to: THREE_POINTS });
    else if (way === "matched") removeField([...place, "matched"]);
    else removeField(place);
  };
  return (
    <>
      <FieldRow path={[...path, "file"]} />
      <ScanUnit path={path} />
      <WaySwitch label="Where it stands" ways={WAYS} way={way} onChange={give} />
      {isUnplaced && <p className="part-note">{MESH_UNPLACED}</p>}
      {way === "matched" && <ScanMatches path={path} truck={truck} scan={scan} />}
      {truck.setup.within.some((one) => isOfWhole(one.path, place)) && (
        <p className="part-note">{MESH_WITHIN}</p>
      )}
      {way !== "points" && scan && <ScanNudge path={path} isOnRight={standsAsTyped(scan.part)} />}
      {scan && <ScanPoints path={path} truck={truck} scan={scan} />}
      {way === "points" ? (
        <>
          <PointFields
            caption="Three points of the mesh"
            rowHead="in mesh"
            rows={[0, 1, 2].map((i) => ({ label: `point ${i + 1}`, path: [...place, "from", i] }))}
          />
          <PointFields
            caption="The same points on the truck"
            rowHead="on truck"
            rows={[0, 1, 2].map((i) => ({ label: `point ${i + 1}`, path: [...place, "to", i] }))}
          />
          <ScanFit path={path} />
        </>
      ) : (
        <>
          <FieldRow path={[...place, "scale"]} />
          <OptionalBlock
            path={[...place, "turn"]}
            title="Turn"
            note="Degrees about X, then Y, then Z. 90, 0, 0 stands a Y-up file upright."
            start={() => [0, 0, 0]}
          >
            <PointFields
              caption="Turned by"
              rowHead=""
              rows={[{ label: "degrees", path: [...place, "turn"] }]}
            />
          </OptionalBlock>
          <OptionalBlock
            path={[...place, "move"]}
            title="Move"
            note="Where the file's origin goes on the truck."
            start={() => [0, 0, 0]}
          >
            <PointFields
              caption="Moved by"
              rowHead=""
              rows={[{ label: "moved", path: [...place, "move"] }]}
            />
          </OptionalBlock>
        </>
      )}
    </>
  );
}

/** Whether a number says where a mesh stands as a whole. */
function isOfWhole(path: KeyPath, place: KeyPath): boolean {
  return isWithin(path, place) && path[place.length] !== "matched";
}

/** Three points not in line, to be put right. */
const THREE_POINTS = [
  [0, 0, 0],
  [10, 0, 0],
  [0, 0, 10],
];
