import { isInside, type VariantTick } from "../../studies/window/variantTicks.ts";
import type { FieldWindow } from "../../studies/window/windowTypes.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import { truckName } from "../../studies/wording/truckName.ts";
import { valueText, type WindowSpeech, windowSentences } from "../../studies/wording/windowWords.ts";
import { type Column, cutShortLine, heading, textTable } from "./textTable.ts";

const COLUMNS: readonly Column[] = [
  { header: "Variant", align: "left" },
  { header: "Value", align: "right" },
  { header: "On this truck", align: "left" },
];

/** A window as a person reads it: what fits, what sets each end, where the variants stand. */
export function windowTable(
  window: FieldWindow,
  speech: WindowSpeech,
  ticks: readonly VariantTick[],
): string {
  const rows = ticks.map(({ name, value }) => [
    truckName(name),
    valueText(value, window.kind, speech.format),
    isInside(window, value)
      ? "fits"
      : value < window.from || value > window.to
        ? "not looked at"
        : "does not fit",
  ]);
  const blocks = [
    `${heading(speech.model.setup)}\n${windowSentences(window, speech).join("\n")}\n${cutShortLine("window", window)}`,
    ticks.length > 1 ? textTable(COLUMNS, rows) : "",
    CAUTIONS,
  ];
  return blocks.filter((block) => block !== "").join("\n");
}
