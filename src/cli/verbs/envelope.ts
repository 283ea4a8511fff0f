import type { Command } from "commander";
import { dxfText } from "../../files/writeDxf.ts";
import { glbBytes } from "../../files/writeGlb.ts";
import { stlBytes } from "../../files/writeStl.ts";
import { svgText } from "../../files/writeSvg.ts";
import type { NamedMesh } from "../../geometry/drawnFile.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { ENVELOPE_CAUTIONS, envelopeAbout, homePose } from "../../studies/documents/envelopeAbout.ts";
import { sectionSheet } from "../../studies/documents/sectionSheet.ts";
import type { Envelope } from "../../studies/envelope/envelopeOf.ts";
import { type EnvelopeSection, envelopeSection } from "../../studies/section/envelopeSection.ts";
import { meshBounds, segmentCount } from "../../studies/section/outline.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import {
  type AskedEnvelope,
  askedEnvelope,
  type EnvelopeOptions,
  type OutFormat,
  writeAsked,
} from "../asked/askedEnvelope.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { rangeLimits } from "../asked/rangeLimits.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck, type Truck } from "../asked/readTruck.ts";
import { withAligned } from "../asked/sharedOptions.ts";
import { sweptEnvelopes } from "../asked/sweptEnvelopes.ts";
import type { Terminal } from "../asked/terminal.ts";
import { envelopeJson, type WrittenFile } from "../output/envelopeJson.ts";
import { envelopeTable } from "../output/envelopeTable.ts";

const EXAMPLES = `
Examples:
  wellsweep envelope truck.json --out swept.stl --out swept.glb --straight
  wellsweep envelope truck.json --out swept.stl --stance driving --side left
  wellsweep envelope truck.json --out x0.svg --out x0.dxf --section x=0 --travel 3

The ending of a name decides what is written: .stl (binary, mm) and .glb (meters, Y up) are the surface; .dxf (the
file's units) and .svg (mm) are the section, 1:1. A file of that name that this program wrote is replaced, any other
only with --force, and none that the run reads. Several files are written all or none, and each whole.

Exit codes: 0 written, 1 written but a joint cannot follow somewhere in the range, 2 ${NO_ANSWER}.`;

/** `envelope`: the space swept by tire and rim, as a surface or cut by a plane, in files. */
export function addEnvelope(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("envelope"))
    .description("Writes the space swept by tire and rim: its surface, and sections of it against the body.")
    .option(
      "--out <NAME>",
      "file to write, .stl, .glb, .dxf or .svg; any number of times",
      (value: string, before: readonly string[] | undefined) => [...(before ?? []), value],
    )
    .option("--force", "replace a file of that name that another program wrote")
    .option("--side <SIDE>", "left, right or both", "both")
    .option("--stance <NAME>", "one height: one of the file's stances; default all travel")
    .option("--travel <LEN>", "one height: wheel travel, + = bump")
    .option("--steer <S>", "one steering input, from -1 (full right) to 1 (full left); default lock to lock")
    .option("--straight", "wheels straight ahead")
    .option("--section <AXIS=LEN>", "plane to cut by, for .dxf and .svg: x=LEN, y=LEN or z=LEN")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: EnvelopeOptions) => end(runEnvelope(file, options, terminal)));
}

function runEnvelope(file: string, options: EnvelopeOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { model } = truck;
  const asked = askedEnvelope(truck, options);
  const limits = rangeLimits(truck, asked.range, options);
  const budget = askedBudget(truck.file, options, terminal);
  const envelopes = sweptEnvelopes(truck, asked, { budget, asked: options.budget }, terminal);
  const pose = homePose(model, asked.range);
  const section = asked.plane === null ? null : cutBy(truck, envelopes, asked, pose, options);
  const made = madeFiles(truck, asked, { envelopes, section, pose });
  const report = { range: asked.range, envelopes, section, files: made.files, limits };
  const told = options.json
    ? documentText(envelopeJson(report, model.setup.units), truck)
    : envelopeTable(report, model);
  // Last, when nothing is left that could fail: files that are there and no answer would not go together.
  writeAsked(truck, asked, options, made.bytes);
  terminal.writeOut(told);
  return limits.length > 0 ? ExitCode.Rubs : ExitCode.Fine;
}

function cutBy(
  { file, model }: Truck,
  envelopes: readonly Envelope[],
  { plane }: AskedEnvelope,
  pose: SolvedPose | null,
  options: EnvelopeOptions,
): EnvelopeSection {
  const section = envelopeSection(model, envelopes, plane!, pose);
  if (section.figures.some(({ kind }) => kind === "envelope")) return section;
  const { units } = model.setup;
  const axis = "xyz".indexOf(plane!.axis) as 0 | 1 | 2;
  const ranges = envelopes.map(({ mesh }) => {
    const { min, max } = meshBounds([mesh]);
    const text = (mm: number) => `${Number(unitsFromMm(mm, units).toFixed(2))}`;
    return `${text(min[axis])} to ${text(max[axis])} ${units}`;
  });
  const mend = `misses the swept space, which runs from ${[...new Set(ranges)].join(" and from ")} along ${plane!.axis}`;
  throw InputError.ofOption(file, "--section", options.section ?? "", mend);
}

/** What the files show. */
interface Drawn {
  readonly envelopes: readonly Envelope[];
  readonly section: EnvelopeSection | null;
  readonly pose: SolvedPose | null;
}

/** What the files asked for hold, in their order, and what is told of each. */
function madeFiles(
  { model }: Truck,
  { outs, range }: AskedEnvelope,
  { envelopes, section, pose }: Drawn,
): { readonly files: WrittenFile[]; readonly bytes: Uint8Array[] } {
  const { setup } = model;
  const about = envelopeAbout(model, range);
  const meshes = envelopes.map(({ side, mesh }): NamedMesh => ({ name: `envelope ${side}`, mesh }));
  const triangles = meshes.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
  const drawn = section === null ? null : sectionSheet(section, range, pose, model);
  const segments = section?.figures
    .flatMap(({ outlines }) => outlines)
    .reduce((sum, outline) => sum + segmentCount(outline), 0);
  const contents: Readonly<Record<OutFormat, () => Uint8Array>> = {
    stl: () =>
      stlBytes(
        meshes.map(({ mesh }) => mesh),
        about,
      ),
    glb: () => glbBytes(meshes, { about, cautions: ENVELOPE_CAUTIONS }),
    dxf: () => bytesOf(dxfText(drawn!)),
    svg: () => bytesOf(svgText(drawn!)),
  };
  const units = { stl: "mm", glb: "m", dxf: setup.units, svg: "mm" } as const;
  const bytes = outs.map(({ format }) => contents[format]());
  const files = outs.map(({ file, format }, i) => {
    const isSurface = format === "stl" || format === "glb";
    const pieces = isSurface ? triangles : (segments ?? 0);
    return { file, format, units: units[format], bytes: bytes[i]!.length, pieces };
  });
  return { files, bytes };
}

function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
