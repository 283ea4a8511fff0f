import type { Vec3 } from "../../../geometry/vec.ts";
import type { LoadedMesh } from "../../../setup/reading/blockReading.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import type { MeshPart } from "../../../setup/types/truckTypes.ts";
import { mmPerScan, type Standing, standingOf } from "../../../studies/worksheet/scanFit.ts";
import { type FileUnits, unitsFromMm } from "../../../units/lengthUnits.ts";
import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import type { WorkbenchState } from "../../state/workbenchState.ts";

/** A mesh file of the setup as it stands on the truck shown. */
export interface ScanOnBoard {
  /** As its file has it. */
  readonly mesh: LoadedMesh;
  /** As it stands, vehicle axes, mm. */
  readonly part: MeshPart;
  /** Of the part among the truck's. */
  readonly index: number;
  readonly standing: Standing;
}

/** The mesh file that was given for a body part; null = none that reads. @param path of the body part */
export function meshOfPart(state: WorkbenchState, path: KeyPath): LoadedMesh | null {
  const file = valueAt(shownDocument(state), [...path, "file"]);
  const found =
    typeof file === "string" ? state.meshes.files.get(file.slice(file.lastIndexOf("/") + 1)) : undefined;
  return found && !("refused" in found) ? found : null;
}

/** A mesh file of the setup with where it stands; null while the truck shown has none such. @param path of the body part */
export function scanOnBoard(state: WorkbenchState, path: KeyPath): ScanOnBoard | null {
  const document = shownDocument(state);
  const mesh = meshOfPart(state, path);
  const body = state.truck?.setup.truck.body ?? [];
  const index = body.findIndex(({ name }) => name === valueAt(document, [...path, "name"]));
  const part = body[index];
  if (!mesh || part?.kind !== "mesh" || part.positions.length !== mesh.positions.length) return null;
  const standing = standingOf(
    mesh.positions,
    part.positions,
    mmPerScan(document, path, fileUnitsOf(document)),
  );
  return standing && { mesh, part, index, standing };
}

/** A point as the file has it. @param mm rounded to what no tape reads: 1/1000 mm */
export function pointInUnits(mm: Vec3, units: FileUnits): readonly number[] {
  const digits = units === "mm" ? 3 : 5;
  return mm.map((one) => Number(unitsFromMm(one, units).toFixed(digits)) + 0);
}

/** Degrees as the file has them: to a ten-thousandth, 1/200 mm at the far end of a fender. */
export function degreesInFile(turn: Vec3): readonly number[] {
  return turn.map((one) => Number(one.toFixed(4)) + 0);
}
