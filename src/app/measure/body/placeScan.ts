import { addScaled, type Vec3 } from "../../../geometry/vec.ts";
import type { LoadedMesh } from "../../../setup/reading/blockReading.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { scanOnPoints } from "../../../studies/measure/scanOnPoints.ts";
import { matchesOf, type Standing } from "../../../studies/worksheet/scanFit.ts";
import { boxOf, type ScanStep, steppedScan } from "../../../studies/worksheet/scanMove.ts";
import type { ScanHit } from "../../state/scanPick.ts";
import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";
import { degreesInFile, pointInUnits, scanOnBoard } from "./scanOnBoard.ts";

/** Writes where a scan stands as its turn and move, as one step. @param path of the body part */
function stand(path: KeyPath, { turnDegrees, move }: Pick<Standing, "turnDegrees" | "move">): void {
  const state = workbench.getState();
  const document = shownDocument(state);
  const place = [...path, "place"];
  const { from, to, ...kept } = (valueAt(document, place) ?? {}) as Record<string, unknown>;
  const matched = kept.matched ?? asMatched(from, to);
  state.editField(place, {
    ...kept,
    ...(matched === undefined ? {} : { matched }),
    turn: degreesInFile(turnDegrees),
    move: pointInUnits(move, fileUnitsOf(document)),
  });
}

/** Three points as matched ones. */
function asMatched(from: unknown, to: unknown): unknown {
  if (!Array.isArray(from) || !Array.isArray(to)) return undefined;
  return from.map((inMesh: unknown, i) => ({ inMesh, onTruck: to[i] as unknown }));
}

/** Gives a scan by matched points from now on: it stays where it stands. @param path of the body part */
export function matchFrom(path: KeyPath): void {
  const state = workbench.getState();
  state.beginGesture();
  const scan = scanOnBoard(state, path);
  if (scan) stand(path, scan.standing);
  const place = [...path, "place"];
  const there = valueAt(shownDocument(workbench.getState()), place) as Record<string, unknown> | undefined;
  const { from, to, ...kept } = there ?? {};
  state.editField(place, { ...kept, matched: kept.matched ?? asMatched(from, to) ?? [{}, {}, {}] });
  state.endGesture();
}

/** Puts a scan where its matched points fit best. @param path of the body part; @returns why not, or null */
export function fitScan(path: KeyPath): string | null {
  const document = shownDocument(workbench.getState());
  const matched = matchesOf(document, path, fileUnitsOf(document)).filter((one) => one !== null);
  const fit = scanOnPoints(matched);
  if (!fit.ok) return fit.mend;
  stand(path, fit.placing);
  return null;
}

/** Moves or turns a scan a little, as one step. @param path of the body part */
export function nudgeScan(path: KeyPath, step: ScanStep): void {
  const scan = scanOnBoard(workbench.getState(), path);
  if (!scan) return;
  const [min, max] = boxOf(scan.part.positions);
  stand(path, steppedScan(scan.standing, step, addScaled(addScaled([0, 0, 0], min, 0.5), max, 0.5)));
}

/** Where a press on a scan lies in its file's own numbers. */
export function inFile({ positions, triangles }: LoadedMesh, { triangle, shares }: ScanHit): Vec3 {
  return shares.reduce<Vec3>(
    (sum, share, corner) => {
      const at = 3 * triangles[3 * triangle + corner]!;
      return addScaled(sum, [positions[at]!, positions[at + 1]!, positions[at + 2]!], share);
    },
    [0, 0, 0],
  );
}
