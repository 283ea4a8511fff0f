import type { LengthUnit, SetupIssue } from "../../setup/types/types.ts";
import type { Measured } from "../../studies/measure/measured.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { offText, pointWords, readingName, readText, sizeWords } from "../../studies/wording/measureNames.ts";
import {
  freeSentences,
  leftOutSentence,
  MEASURE_CAUTION,
  measuredSentence,
  nextSentence,
  sigmaText,
  standingText,
  suspectSentences,
  unevenSentences,
  withinWords,
} from "../../studies/wording/measureWords.ts";
import { cutShortLine, pointCell, textTable } from "./textTable.ts";

/** What is told of a truck's readings. */
export interface MeasureTold {
  readonly measured: Measured;
  /** Readings that cannot be, each with its mend. */
  readonly leftOut: readonly SetupIssue[];
  readonly title: string;
  readonly units: LengthUnit;
  /** The setup file written with it; null = none. */
  readonly written: string | null;
}

/** What a truck's readings come to as a person reads it. */
export function measureTable({ measured, leftOut, title, units, written }: MeasureTold): string {
  const format = formatOf({ units });
  const { points, sizes, residuals, suspect, free } = measured;
  const sentences = [
    measuredSentence(measured),
    ...leftOut.map(leftOutSentence),
    ...suspectSentences(suspect, format),
    ...unevenSentences(measured, format),
    ...freeSentences(free),
    nextSentence(measured, format),
    written === null
      ? ""
      : `Written to ${written}, as measured; the reading most likely wrong is in it, if there is one.`,
  ].filter((sentence) => sentence !== "");
  const readings = textTable(
    [
      { header: "No.", align: "right" },
      { header: "Reading", align: "left" },
      { header: "Read", align: "right" },
      { header: "Off", align: "right" },
      { header: "Off the others", align: "right" },
      { header: "", align: "left" },
    ],
    residuals.map((one) => {
      const { reading, off } = one;
      return [
        String(reading.index + 1),
        readingName(reading),
        "is" in reading ? readText(reading.kind, reading.is, format) : "",
        offText(reading.kind, off, format),
        sigmaText(one),
        suspect?.reading === reading ? "read again" : "",
      ];
    }),
  );
  const places = textTable(
    [
      { header: "Point", align: "left" },
      { header: `x, y, z (${units})`, align: "right" },
      { header: "One std. dev.", align: "right" },
      { header: "", align: "left" },
    ],
    [
      ...points.map((point) => {
        const name = pointWords(point.point);
        const [x, y, z] = point.at;
        return [
          point.side === "right" ? `right ${name}` : name,
          pointCell(point.side === "right" ? [x, -y, z] : [x, y, z], format),
          point.within.map((mm) => withinWords(mm, format).replace(/ (in|mm)$/, "")).join(", "),
          standingText(point),
        ];
      }),
      ...sizes.map(({ size, at, within }) => [
        sizeWords(size),
        readText("size", at, format),
        withinWords(within, format).replace(/ (in|mm)$/, ""),
        "measured",
      ]),
    ],
  );
  return [
    `${title}: measured\n${sentences.join("\n")}\n${cutShortLine("measure", measured)}`,
    readings,
    places,
    MEASURE_CAUTION,
  ].join("\n");
}
