import { documentText } from "../../studies/documents/documentText.ts";
import type { ReportAsk } from "../../studies/documents/reportText.ts";
import { fileStem, knuckleStem } from "../../studies/wording/fileStem.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { unusualDoubts } from "../../studies/wording/unusualReport.ts";
import { memoLast } from "../state/memoLast.ts";
import type { Truck } from "../state/truck.ts";
import { savedReport } from "../work/savedReport.ts";
import type { ShapeAsk } from "../work/shapeBytes.ts";
import type { SavedFile } from "./useSaving.ts";

/** A document of a truck as the command line prints it, as a file to save. @param about what it holds, in words */
export function reportFile(truck: Truck, ask: ReportAsk, about: string): SavedFile {
  const isCsv = ask.of.endsWith(" csv");
  const stem = stemOf(truck);
  const ending = isCsv ? "csv" : "json";
  return {
    name: `${about} (${ending.toUpperCase()})`,
    file: `${stem}-${ask.of.replace(" csv", "")}.${ending}`,
    type: isCsv ? "text/csv" : "application/json",
    make: async (signal, onShare) => (await savedReport(truck, ask, signal, onShare)) as BlobPart,
  };
}

/** The swept space as the command line writes it, as a file to save. */
export function shapeFile(truck: Truck, ask: Omit<ShapeAsk, "of">): SavedFile {
  const { what, unit, type } = SHAPES[ask.format];
  return {
    name: `Swept space, ${what} (${ask.format.toUpperCase()}, ${unit ?? `1:1 in ${unitWords(truck)}`})`,
    type,
    file: `${stemOf(truck)}-${ask.plane ? "section" : "envelope"}.${ask.format}`,
    make: async (signal, onShare) =>
      (await savedReport(truck, { of: "shape", ...ask }, signal, onShare)) as BlobPart,
  };
}

/** `unit` null = the truck's own. */
const SHAPES = {
  stl: { what: "surface", unit: "in mm", type: "model/stl" },
  glb: { what: "surface", unit: "in meters", type: "model/gltf-binary" },
  dxf: { what: "section", unit: null, type: "image/vnd.dxf" },
  svg: { what: "section", unit: "prints 1:1", type: "image/svg+xml" },
} as const;

/** What lengths of a truck's files are in. */
export function unitWords({ setup }: Truck): string {
  return setup.units === "in" ? "inches" : "millimeters";
}

/**
 * A document of an answer that the page has already, or gets when it is saved, as a file.
 * @param document as the command line has it
 */
export function documentFile(
  truck: Truck,
  of: string,
  about: string,
  document: (...asked: Parameters<SavedFile["make"]>) => object | Promise<object>,
): SavedFile {
  const textOf = (made: object) => {
    const { model } = truck;
    return documentText(made, { model, unusual: unusualDoubts(model, formatOf(model.setup)) });
  };
  return {
    name: `${about} (JSON)`,
    file: `${stemOf(truck)}-${of}.json`,
    type: "application/json",
    make: (...asked) => {
      const made = document(...asked);
      return made instanceof Promise ? made.then(textOf) : textOf(made);
    },
  };
}

/** A document of a truck's knuckle, named as its drawings are: by its order where there is one. */
export function knuckleFile(...asked: Parameters<typeof documentFile>): SavedFile {
  const [truck, of] = asked;
  return { ...documentFile(...asked), file: `${knuckleStem(truck.bolted.setup, truck.file)}-${of}.json` };
}

const stems = memoLast(fileStem);

/** What files of a truck begin with. */
export function stemOf({ setup, file }: Pick<Truck, "setup" | "file">): string {
  return stems(setup, file);
}
