import type { LengthUnit } from "../../setup/types/types.ts";
import { limitJson } from "../../studies/documents/checkJson.ts";
import { pointFromMm } from "../../studies/documents/documentText.ts";
import type { Envelope } from "../../studies/envelope/envelopeOf.ts";
import type { EnvelopeRange } from "../../studies/envelope/envelopeRange.ts";
import type { ReachLimit } from "../../studies/reports/reachLimits.ts";
import type { EnvelopeSection } from "../../studies/section/envelopeSection.ts";
import { meshBounds, meshVolume } from "../../studies/section/outline.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { isDrawing, type OutFormat } from "../asked/askedEnvelope.ts";

/** A file that was written. */
export interface WrittenFile {
  readonly file: string;
  readonly format: OutFormat;
  readonly units: "mm" | "m" | "in";
  readonly bytes: number;
  /** Of a surface, triangles; of a drawing, straight pieces. */
  readonly pieces: number;
}

/** What an `envelope` run did. */
export interface EnvelopeReport {
  readonly range: EnvelopeRange;
  readonly envelopes: readonly Envelope[];
  readonly section: EnvelopeSection | null;
  readonly files: readonly WrittenFile[];
  /** Joints that cannot follow somewhere in the range: the swept space ends there. */
  readonly limits: readonly ReachLimit[];
}

/**
 * What `envelope --json` prints: lengths in the file's units, areas and volumes in their squares and cubes; `within`: the
 * ring lies in the surface but for `inside`, and the surface nowhere farther from it than `outside`. `cutShort`
 * where the budget did for a coarser one alone; `section` only when one was asked for, `limits` only when one is passed.
 */
export function envelopeJson(
  { range, envelopes, section, files, limits }: EnvelopeReport,
  units: LengthUnit,
) {
  const perUnit = unitsFromMm(1, units);
  return {
    units,
    travel: [unitsFromMm(range.travelLow, units), unitsFromMm(range.travelHigh, units)],
    steer: [range.steerLow, range.steerHigh],
    files: files.map(({ file, format, units: fileUnits, bytes, pieces }) => ({
      file,
      format,
      units: fileUnits,
      bytes,
      [isDrawing(format) ? "segments" : "triangles"]: pieces,
    })),
    envelopes: envelopes.map(({ side, mesh, inside, outside, cutShort }) => {
      const { min, max } = meshBounds([mesh]);
      return {
        side,
        triangles: mesh.triangles.length / 3,
        volume: meshVolume(mesh) * perUnit ** 3,
        bounds: { min: pointFromMm([...min], units), max: pointFromMm([...max], units) },
        within: { inside: unitsFromMm(inside, units), outside: unitsFromMm(outside, units) },
        ...(cutShort ? { cutShort } : {}),
      };
    }),
    ...(section === null
      ? {}
      : {
          section: {
            axis: section.plane.axis,
            at: unitsFromMm(section.plane.at, units),
            envelopeArea: section.envelopeArea * perUnit ** 2,
            clearances: section.clearances.map(({ part, side, distanceInPlane }) => ({
              part,
              side,
              distanceInPlane: unitsFromMm(distanceInPlane, units),
            })),
          },
        }),
    ...(limits.length > 0 ? { limits: limits.map((limit) => limitJson(limit, units)) } : {}),
  };
}
