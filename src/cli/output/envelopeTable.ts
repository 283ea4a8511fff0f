import type { Model } from "../../studies/model/model.ts";
import type { EnvelopeSection } from "../../studies/section/envelopeSection.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { limitSentence } from "../../studies/wording/limitSentences.ts";
import { rangeWords } from "../../studies/wording/poseWords.ts";
import { formatLength } from "../../units/formatLength.ts";
import { isDrawing } from "../asked/askedEnvelope.ts";
import type { EnvelopeReport } from "./envelopeJson.ts";
import { cutShortLine, gapCell, heading, textTable } from "./textTable.ts";

/** What was written, as a person reads it. */
export function envelopeTable(report: EnvelopeReport, model: Model): string {
  const { setup } = model;
  const format = formatOf(setup);
  const sides = report.envelopes.map(({ side }) => side).join(" and ");
  const files = report.files.map(({ file, units, bytes, format: kind, pieces }) => [
    file,
    `${isDrawing(kind) ? "section, 1:1" : "surface"}, ${units}`,
    `${pieces} ${isDrawing(kind) ? "segments" : "triangles"}`,
    String(bytes),
  ]);
  const blocks = [
    `${heading(setup)}\nSpace swept by tire and rim ${rangeWords(report.range, model, format)}: ${sides}\n`,
    cutShortLine("envelope", report.envelopes.find(({ cutShort }) => cutShort) ?? {}),
    report.limits.map((limit) => `${limitSentence(limit, model, format)}\n`).join(""),
    textTable(
      [
        { header: "Written", align: "left" },
        { header: "What", align: "left" },
        { header: "Size", align: "right" },
        { header: "Bytes", align: "right" },
      ],
      files,
    ),
    accuracyLine(report),
    report.section === null ? "" : sectionTable(report.section, model),
    CAUTIONS,
  ];
  return blocks.filter((block) => block !== "").join("\n");
}

/** How near the surface is to what is really swept, in mm whatever the file's units: it says how it was worked out. */
function accuracyLine({ envelopes }: EnvelopeReport): string {
  const inside = Math.max(...envelopes.map((envelope) => envelope.inside));
  const outside = Math.max(...envelopes.map((envelope) => envelope.outside));
  return `Tire and rim lie inside this surface at every pose, to within ${inside} mm; it stands off by at most ${outside} mm.\n`;
}

function sectionTable({ plane, clearances }: EnvelopeSection, model: Model): string {
  const { units } = model.setup;
  const format = formatOf(model.setup);
  const place = `${plane.axis.toUpperCase()} = ${formatLength(plane.at, format)}`;
  if (clearances.length === 0) return `At ${place} the plane cuts no body part.\n`;
  const rows = clearances.map(({ part, side, distanceInPlane }) => [
    part,
    side,
    distanceInPlane === 0 ? "meets it" : gapCell(distanceInPlane, format),
  ]);
  const table = textTable(
    [
      { header: `At ${place}`, align: "left" },
      { header: "Side", align: "left" },
      { header: `From the swept space (${units})`, align: "right" },
    ],
    rows,
  );
  return `${table}Distances in this plane alone: off it a part may be nearer. For the gaps themselves: wellsweep check.\n`;
}
