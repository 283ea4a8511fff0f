import { documentText } from "../../studies/documents/documentText.ts";
import type { ReportAsk } from "../../studies/documents/reportText.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { unusualDoubts } from "../../studies/wording/unusualReport.ts";
import type { Truck } from "../state/truck.ts";
import { savedReport } from "../work/savedReport.ts";
import type { ShapeAsk } from "../work/shapeBytes.ts";
import type { SavedFile } from "./SaveMenu.tsx";

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

const SHAPES = {
  stl: { name: "surface (STL, mm)", type: "model/stl" },
  glb: { name: "surface (GLB, meters)", type: "model/gltf-binary" },
  dxf: { name: "section (DXF, 1:1)", type: "image/vnd.dxf" },
  svg: { name: "section (SVG, 1:1)", type: "image/svg+xml" },
} as const;

/** The swept space as the command line writes it, as a file to save. */
export function shapeFile(truck: Truck, ask: Omit<ShapeAsk, "of">): SavedFile {
  const { name, type } = SHAPES[ask.format];
  return {
    name: `Swept space, ${name}`,
    type,
    file: `${stemOf(truck)}-${ask.plane ? "section" : "envelope"}.${ask.format}`,
    make: async (signal, onShare) =>
      (await savedReport(truck, { of: "shape", ...ask }, signal, onShare)) as BlobPart,
  };
}

/** A document of an answer that the page has already, as a file to save. @param document as the command line has it */
export function documentFile(truck: Truck, of: string, about: string, document: () => object): SavedFile {
  return {
    name: `${about} (JSON)`,
    file: `${stemOf(truck)}-${of}.json`,
    type: "application/json",
    make: () => {
      const { model } = truck;
      return documentText(document(), { model, unusual: unusualDoubts(model, formatOf(model.setup)) });
    },
  };
}

function stemOf({ file }: Truck): string {
  return file.replace(/\.[^.]*$/, "") || "truck";
}
