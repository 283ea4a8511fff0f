import { extname } from "node:path";
import type { EnvelopeRange } from "../../studies/envelope/envelopeRange.ts";
import type { SectionPlane } from "../../studies/section/outline.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { OutRules } from "../disk/outTarget.ts";
import { checkOutFiles, writeFiles } from "../disk/writeFiles.ts";
import { askedHeight } from "./askedHeight.ts";
import { InputError } from "./inputError.ts";
import { readLength, readSteer } from "./readNumbers.ts";
import type { Truck } from "./readTruck.ts";
import type { AlignedOptions } from "./sharedOptions.ts";

export interface EnvelopeOptions extends AlignedOptions {
  readonly out?: readonly string[];
  readonly force?: boolean;
  readonly side: string;
  readonly stance?: string;
  readonly travel?: string;
  readonly steer?: string;
  readonly straight?: true;
  readonly section?: string;
}

export const FORMATS = ["stl", "glb", "dxf", "svg"] as const;
export type OutFormat = (typeof FORMATS)[number];

/** What an `envelope` run is asked for. */
export interface AskedEnvelope {
  readonly sides: readonly Side[];
  readonly range: EnvelopeRange;
  /** null when none is asked for; drawings then are not either. */
  readonly plane: SectionPlane | null;
  readonly outs: readonly { readonly file: string; readonly format: OutFormat }[];
}

/** Reads the options, before anything that takes long is worked out. @throws InputError for the first that is wrong */
export function askedEnvelope(truck: Truck, options: EnvelopeOptions): AskedEnvelope {
  const outs = askedOuts(truck, options);
  const plane = options.section === undefined ? null : askedPlane(truck, options.section);
  const drawing = outs.find(({ format }) => isDrawing(format));
  if (drawing && plane === null) {
    throw refused(
      truck,
      "--out",
      drawing.file,
      'is a section; say where with --section, such as --section "x=0"',
    );
  }
  if (plane && !drawing) {
    throw refused(truck, "--section", options.section!, "is drawn; name a .dxf or .svg file with --out");
  }
  const asked = { sides: askedSides(truck, options.side), range: askedRange(truck, options), plane, outs };
  const files = outs.map(({ file }) => file);
  checkOutFiles(files, outRules(truck, options), (file, mend) => refused(truck, "--out", file, mend));
  return asked;
}

/** Writes what was asked for, all or none. @param contents one for each of `outs` @throws InputError */
export function writeAsked(
  truck: Truck,
  { outs }: AskedEnvelope,
  options: EnvelopeOptions,
  contents: readonly Uint8Array[],
): void {
  const files = outs.map(({ file }, i) => ({ file, bytes: contents[i]! }));
  writeFiles(files, outRules(truck, options), (file, mend) => refused(truck, "--out", file, mend));
}

function outRules({ inputs }: Truck, { force = false }: EnvelopeOptions): OutRules {
  return { inputs, force };
}

export function isDrawing(format: OutFormat): boolean {
  return format === "dxf" || format === "svg";
}

function askedOuts(truck: Truck, { out = [] }: EnvelopeOptions): AskedEnvelope["outs"] {
  if (out.length === 0) {
    throw InputError.ofOption(
      truck.file,
      "--out",
      null,
      "is missing; name a file to write, such as envelope.stl",
    );
  }
  return out.map((file) => {
    const extension = extname(file).slice(1).toLowerCase();
    const format = FORMATS.find((one) => one === extension);
    if (format === undefined) {
      throw refused(
        truck,
        "--out",
        file,
        "must end in .stl, .glb, .dxf or .svg: that decides what is written",
      );
    }
    return { file, format };
  });
}

function askedSides(truck: Truck, side: string): readonly Side[] {
  if (side === "both") return ["left", "right"];
  if (side === "left" || side === "right") return [side];
  throw refused(truck, "--side", side, "must be left, right or both");
}

function askedRange(truck: Truck, options: EnvelopeOptions): EnvelopeRange {
  const { stance, straight, travel, steer } = options;
  const { droop, bump } = truck.model.setup.travel;
  if (straight && steer !== undefined) {
    throw refused(truck, "--steer", steer, "cannot be used with --straight; choose one of them");
  }
  const height = askedHeight(truck, { stance, travel });
  const turn =
    steer === undefined
      ? straight
        ? 0
        : null
      : readSteer(steer, { file: truck.file, option: "--steer", value: steer });
  return {
    travelLow: height ?? droop,
    travelHigh: height ?? bump,
    steerLow: turn ?? -1,
    steerHigh: turn ?? 1,
  };
}

function askedPlane(truck: Truck, text: string): SectionPlane {
  const [, axis, place] = /^\s*([xyz])\s*=(.*)$/is.exec(text) ?? [];
  if (axis === undefined || place === undefined) {
    throw refused(truck, "--section", text, 'write an axis, = and a length, such as "x=0" or "z=24 1/2"');
  }
  const at = readLength(place, truck.model.setup.units, {
    file: truck.file,
    option: "--section",
    value: text,
  });
  return { axis: axis.toLowerCase() as SectionPlane["axis"], at };
}

function refused({ file }: Truck, option: string, value: string, mend: string): InputError {
  return InputError.ofOption(file, option, value, mend);
}
