import type { LengthUnit } from "../../setup/types/types.ts";
import { limitJson } from "../../studies/documents/checkJson.ts";
import { pointFromMm } from "../../studies/documents/pointFromMm.ts";
import { meshBounds, meshVolume } from "../../studies/section/outline.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { isDrawing } from "../asked/askedEnvelope.ts";
import type { EnvelopeReport } from "./envelopeReport.ts";

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
