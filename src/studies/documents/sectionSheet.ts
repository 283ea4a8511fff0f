import type { SectionDrawing } from "../../geometry/sectionDrawing.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import { formatLength } from "../../units/formatLength.ts";
import type { EnvelopeRange } from "../envelope/envelopeRange.ts";
import type { Model } from "../model/model.ts";
import type { EnvelopeSection } from "../section/envelopeSection.ts";
import { sheetAxes } from "../section/outline.ts";
import { setupHeading as heading } from "../wording/answerWords.ts";
import { CAUTIONS } from "../wording/cautions.ts";
import { formatOf } from "../wording/lengths.ts";
import { heightWords, isStraight, lockWords, rangeWords } from "../wording/poseWords.ts";

const AXIS_WORDS = ["X (forward)", "Y (left)", "Z (up)"] as const;

/** A section with its words, ready to be drawn. @param pose that tire and rim are drawn at, if any */
export function sectionSheet(
  section: EnvelopeSection,
  range: EnvelopeRange,
  pose: SolvedPose | null,
  model: Model,
): SectionDrawing {
  const { setup } = model;
  const format = formatOf(setup);
  const { axis, at } = section.plane;
  const sheet = sheetAxes(section.plane);
  const sides = new Set(section.figures.map((figure) => figure.side));
  const title = [
    heading(setup),
    `Section at ${axis.toUpperCase()} = ${formatLength(at, format)}: space swept by tire and rim ${rangeWords(range, model, format)}`,
    `Seen from ${sheet.seenFrom}: ${AXIS_WORDS[sheet.right]} to the right, ${AXIS_WORDS[sheet.up]} upward. 1:1`,
  ];
  if (pose !== null) title.push(`Dashed: tire and rim ${poseWords(pose, model)}`);
  return {
    units: setup.units,
    title,
    cautions: [
      "Tire and rim against body parts only: arms, tie rods and brakes are not drawn. Off this plane a part may be nearer.",
      ...CAUTIONS.trimEnd().split("\n"),
    ],
    figures: section.figures.map(({ kind, name, side, outlines }) => ({
      kind,
      name: sides.size > 1 && kind === "part" ? `${name}, ${side}` : name,
      outlines,
    })),
  };
}

function poseWords({ travel, steer }: SolvedPose, model: Model): string {
  const turned = isStraight(steer) ? "wheels straight ahead" : `at ${lockWords(steer)}`;
  return `${heightWords(travel, model, formatOf(model.setup))}, ${turned}`;
}
