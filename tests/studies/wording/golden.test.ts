import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { airOf } from "../../../src/studies/air/airOf.ts";
import { alignTruck } from "../../../src/studies/alignment/alignSide.ts";
import { answerState } from "../../../src/studies/doubts/doubt.ts";
import { floorReport } from "../../../src/studies/floor/floorReport.ts";
import { geometryReport } from "../../../src/studies/geometry/geometryReport.ts";
import { heightStop } from "../../../src/studies/limits/heightWay.ts";
import { limitMargins, limitsOf } from "../../../src/studies/limits/limitsOf.ts";
import { nearerBefore } from "../../../src/studies/map/beforeLock.ts";
import { lowestTravels } from "../../../src/studies/map/lowestTravels.ts";
import { mapReportOf } from "../../../src/studies/map/mapReport.ts";
import { steerLimits } from "../../../src/studies/map/steerLimits.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import { sweepOf } from "../../../src/studies/reports/sweep.ts";
import { windowOf } from "../../../src/studies/window/windowOf.ts";
import { airSentences, allowedSentence, equilibriumSentence } from "../../../src/studies/wording/airWords.ts";
import { alignSentence } from "../../../src/studies/wording/alignSentence.ts";
import {
  answerHeadline,
  answerSentence,
  answerWord,
  conditionLines,
  cutShortSentence,
  needCount,
} from "../../../src/studies/wording/answerWords.ts";
import {
  longestNearerSentence,
  lowestParts,
  nearerBeforeSentence,
} from "../../../src/studies/wording/beforeLockWords.ts";
import {
  AIR_CAUTIONS,
  CAUTIONS,
  FLOOR_CAUTIONS,
  LIMIT_CAUTIONS,
} from "../../../src/studies/wording/cautions.ts";
import {
  halfTrack,
  outSentence,
  rangeClause,
  rangeSentence,
  steerClause,
  steeringFacts,
  steerSentence,
} from "../../../src/studies/wording/comparisonWords.ts";
import { cardFacts, cardText, type TruckAnswer } from "../../../src/studies/wording/counterFacts.ts";
import { floorSentences } from "../../../src/studies/wording/floorWords.ts";
import { gapMarks, partMark, partRows } from "../../../src/studies/wording/gapRows.ts";
import { amountWord, worstFacts, worstFactsText } from "../../../src/studies/wording/gapTexts.ts";
import { geometrySentences } from "../../../src/studies/wording/geometrySentences.ts";
import { amountText, formatOf } from "../../../src/studies/wording/lengths.ts";
import { limitPlace, limitRows, limitsState } from "../../../src/studies/wording/limitRows.ts";
import {
  countedSentence,
  limitSentence,
  limitsPassedSentences,
} from "../../../src/studies/wording/limitSentences.ts";
import {
  bindsText,
  firstMetText,
  leastMarginText,
  limitsStateSentence,
  marginText,
  placeText,
} from "../../../src/studies/wording/limitTexts.ts";
import { mapSentence } from "../../../src/studies/wording/mapSentence.ts";
import { pictureFacts, tellingPose } from "../../../src/studies/wording/pictureFacts.ts";
import { aboveTitle, frontTitle, gapNote, pictureWords } from "../../../src/studies/wording/pictureTexts.ts";
import { poseSentence } from "../../../src/studies/wording/poseSentence.ts";
import { rollSentences } from "../../../src/studies/wording/rollWords.ts";
import { sheetRows } from "../../../src/studies/wording/sheetRows.ts";
import { lowestStandsText } from "../../../src/studies/wording/standsWords.ts";
import { lowStop, steerStop } from "../../../src/studies/wording/stopFacts.ts";
import { lowWayText, steerWayText } from "../../../src/studies/wording/stopTexts.ts";
import { sweepSentence } from "../../../src/studies/wording/sweepSentence.ts";
import { unusualDoubts } from "../../../src/studies/wording/unusualReport.ts";
import { verdictSentence } from "../../../src/studies/wording/verdictSentence.ts";
import { windowSentences } from "../../../src/studies/wording/windowWords.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { runs } from "../../runs.ts";
import { windowSubject } from "../window/windowSubject.ts";
import { building } from "./goldenBuild.ts";
import { exampleTruck } from "./referee/cases.ts";

// Every sentence that the product says of a few trucks, on one page, to be read through for English and for cautions.

/** Looks at the clock before a budget is spent: so few that searches are cut short. */
const FEW = 3;

function counted(looks: number | null): Budget {
  if (looks === null) return Budget.endless();
  let now = 0;
  return Budget.of(looks, () => 1000 * now++);
}

/** What is said of any truck: states, cautions, what a study reached. */
function everywhere(): string {
  const studies = [
    "check",
    "nearest",
    "verdict",
    "limits",
    "ways",
    "map",
    "picture",
    "sweep",
    "pose",
    "envelope",
    "noEnvelope",
    "section",
    "window",
  ] as const;
  const own = { fromExample: null };
  const states = ["rubs", "close", "clear", "unfinished", "unusual", "fromExample"] as const;
  return [
    "## Of any truck",
    ...[
      "",
      "States:",
      ...states.map((state) => `  ${answerHeadline(state, own)}; ${answerWord(state, own)}`),
    ],
    ...["", "Where the time ended first:", ...studies.map((study) => `  ${cutShortSentence(study)}`)],
    ...["", "Needed:", ...[0, 1, 6].map((count) => `  ${needCount(Array(count).fill(["name"]))}`)],
    ...["", "Cautions:", CAUTIONS, LIMIT_CAUTIONS, AIR_CAUTIONS, FLOOR_CAUTIONS],
  ].join("\n");
}

/**
 * What is said of windows: an open one, one of an angle that is sampled, one down to what a setup may hold, an empty one with what
 * opens it; on every change the first three, the others take longest.
 */
function windows(): string {
  const asked = [
    ["half-ton-on-air.json", "narrow hub face", "knuckle.hubFace", {}],
    ["half-ton-on-air.json", "narrow hub face", "knuckle.pinAngle", { from: 0.13, to: 0.17 }],
    ["half-ton-on-air.json", "narrow hub face", "truck.body[0].radius", {}],
    ["half-ton-limits.json", null, "knuckle.hubFace", { from: 150, to: 158 }],
    ["flatbed-long-arms.json", null, "knuckle.steeringArm[2]", { from: 25, to: 60 }],
  ] as const;
  const lines = asked.slice(0, runs(3, asked.length)).flatMap(([file, variant, key, range]) => {
    const { model, subject } = windowSubject(file, variant);
    const found = windowOf(subject, key, range);
    if (!found.ok) throw new TypeError(found.issues[0]!.mend);
    const speech = { model, format: formatOf(model.setup), document: subject.document };
    const title = `${file}, ${variant ?? "as it stands"}, ${key}:`;
    return ["", title, ...windowSentences(found.value, speech).map((line) => `  ${line}`)];
  });
  return ["## Windows", ...lines].join("\n");
}

/** @param looks null = all the time there is */
function told(title: string, model: Model, looks: number | null): string {
  const lines: string[] = [`## ${title}`];
  const head = (name: string) => lines.push("", `${name}:`);
  const say = (...texts: readonly string[]) =>
    lines.push(...texts.flatMap((text) => (text === "" ? [] : text.split("\n").map((line) => `  ${line}`))));
  const { setup } = model;
  const format = formatOf(setup);
  const { stances, allowance } = setup;
  const travels = stances.map(({ travel }) => travel);
  const report = checkClearance(model, { budget: counted(looks) });
  const budget = counted(looks);
  const steering = steerLimits(model, travels, budget);
  const heights = travels.map((travel) => heightStop(model, travel, budget));
  const answer: TruckAnswer = { report, steering, heights, failure: null };
  const doubts = unusualDoubts(model, format);
  const state = answerState(report, doubts);

  head("Verdict");
  say(
    `[${answerHeadline(state, setup)}] ${answerSentence(verdictSentence(report, model, format), state, doubts)}`,
  );
  say(...report.limits.map((limit) => limitSentence(limit, model, format)));
  say(...limitsPassedSentences(report.limitsPassed ?? [], model, format));
  say(countedSentence(report.limitsPassed, report.limitedBy));
  if (report.cutShort) say(cutShortSentence("nearest"));

  head("Parts, the first five");
  for (const row of partRows([], report).slice(0, 5)) {
    const mark = partMark(row, allowance)!;
    say(
      `[${mark.word}] ${row.part}: ${amountWord(mark.word, mark.isOpen)} ${amountText(mark.gap, format, true)}`,
    );
  }
  say(`cell among variants: ${worstFactsText(worstFacts(report, model, doubts), setup, format)}`);

  for (const [travel, steer] of [[0, 0], ...travels.map((one) => [one, -0.7] as const)] as const) {
    head(`Pose at travel ${travel.toFixed(0)} mm, steer ${steer}`);
    const pose = solvePose(model.frontEnd, travel, steer);
    const gaps = pose.ok ? gapsAt(model, pose) : [];
    say(poseSentence(gaps, pose, model, format));
    if (pose.ok)
      say(
        ...gapMarks(gaps, report.worst, false, null, allowance, format)
          .filter(({ text }) => text !== "")
          .map(({ text }) => `mark: ${text}`),
      );
  }

  head("Beside the map");
  for (const one of steering)
    if (one.ok)
      for (const [way, turn] of [
        ["left", one.leftTurn],
        ["right", one.rightTurn],
      ] as const) {
        const [kept, end] = [turn.allowance, turn.touch].map(({ either }) =>
          steerStop(either, one.travel, model),
        );
        say(`${way} ${steerWayText(kept!, end!, allowance, format)}`);
      }
  for (const way of lowestTravels(model, [0, 1], budget))
    if (way.ok) {
      const [kept, end] = [way.allowance, way.touch].map((one) => lowStop(one, way.steer, model, format));
      say(`down ${lowWayText(kept!, end!, allowance, format)}`);
      const isKept = lowestParts(way, model, format).kept?.isPlace === true;
      const there = lowestStandsText(way, isKept, model, format);
      if (there !== "") say(`there ${there}`);
    }
  for (const travel of travels) {
    const nearer = nearerBefore(model, travel, 1);
    const told = nearer && nearerBeforeSentence(nearer, travel, model, format);
    if (told) say(`at full left lock: ${told}`);
    // Its room is kept by that.
    expect((told || "").length).toBeLessThanOrEqual(longestNearerSentence(model, format).length);
  }
  say(mapSentence(mapReportOf(model, { rows: 5, cols: 5, budget: counted(looks) }), model));

  head("Counter");
  stances.forEach(({ name, travel }, at) => {
    const height = heights[at]!;
    const card = cardText(cardFacts(answer, at, doubts), travel, model, format);
    const way = steeringFacts(steering[at]!, height, model, format);
    const clause = steerClause("a", way, model, format);
    say(`${name}: card “${card}”`);
    say(steerSentence(travel, model, [clause], [way], format));
    const stands = height === null;
    const telling = tellingPose(stands ? [{ model, steering: steering[at]! }] : [], travel);
    const pose = solvePose(model.frontEnd, travel, telling.steer);
    if (!pose.ok) return;
    const facts = pictureFacts(model, pose, telling.side, telling.touches?.name ?? null);
    const pictured = { letter: "A", name: "a", hubFace: setup.knuckle.hubFace, allowance, ...facts };
    say(frontTitle(travel, model, format), aboveTitle(telling, travel, model), gapNote([pictured]));
    say(pictureWords(pictured, format));
  });
  say(...conditionLines([{ letter: "A", doubts }]));
  say(rangeSentence([rangeClause("a", report, model, format)]));
  const half = halfTrack(model);
  if (half !== null) say(outSentence(["a", "b"], [half, half - 25.4], format));

  head("Sheet");
  for (const { label, plus, cells } of sheetRows([{ truck: { model }, answer, doubts }], stances, format))
    say(`${label}${plus === "" ? "" : ` (${plus})`}: ${cells.map(({ text }) => text).join(" | ")}`);

  if (setup.limits !== null || setup.airSpring !== null) {
    head("Limits");
    const limits = limitsOf(model, counted(looks), 2, 2);
    say(limitsStateSentence(limitsState(limits)));
    if (limits.cutShort) say(cutShortSentence("limits"));
    for (const { name, overall, now } of limitRows(limitMargins(model, 0, 0), limits.overall))
      if (overall && now)
        say(
          `${name}: least ${leastMarginText(overall, format)}, ${placeText(limitPlace(overall, format), setup, format)}; now ${marginText(now, format)}`,
        );
    for (const { name, travel, poses, first } of limits.stances) {
      say(`${name}: ${poses.map((pose) => bindsText(pose, format)).join("; ")}`);
      if (first) say(firstMetText(first, travel, format));
    }
  }

  head("Floor");
  const floor = floorReport(model);
  say(...floorSentences(floor, model, format));
  if (floor.roll) say(...rollSentences(floor.roll, format));

  const air = airOf(model, setup.units === "in" ? 0.41 : null);
  if (air !== null) {
    head("Air");
    say(...airSentences(air, model, format));
    say(
      ...air.atPressure.map((found) => equilibriumSentence(found, `The ${found.side} side`, setup, format)),
    );
    say(allowedSentence(setup.airSpring!, setup.units, format));
  }

  head("Geometry and alignment");
  say(geometrySentences(geometryReport(model, 3), model));
  const aligned = alignTruck(model);
  if (aligned.ok) say(alignSentence(aligned.alignment, model));
  head("Sweep");
  say(sweepSentence(sweepOf(model, 5), model));
  return lines.join("\n");
}

it("every sentence of a few trucks reads as it did", async () => {
  const page = [
    ["compact-front-steer.json", "narrow hub face"],
    ["half-ton-on-air.json", null],
    ["half-ton-limits.json", "spring bracket an inch lower"],
    ["flatbed-long-arms.json", null],
    ["long-bed-steering-box.json", null],
  ] as const;
  const sections = page.map(([file, variant]) =>
    told(`${file}, ${variant ?? "as it stands"}`, exampleTruck(file, variant).model, null),
  );
  for (const [file, variant] of [page[2], page[3]])
    sections.push(
      told(`${file}, ${variant ?? "as it stands"}, cut short`, exampleTruck(file, variant).model, FEW),
    );
  sections.push(windows(), building(), everywhere());
  const all = `${sections.join("\n\n")}\n`;
  const file = join(import.meta.dirname, "golden.txt");
  if (runs(0, 1) === 1) return expect(all).toMatchFileSnapshot(file);
  // What is left to the long run is missing here, and nothing else; that writes the page anew, too (`--project long -u`).
  const [here, there] = [blocksOf(all), blocksOf(readFileSync(file, "utf8"))];
  const heads = new Set(here.map(headOf));
  expect(here).toEqual(there.filter((block) => heads.has(headOf(block))));
  expect(there.length - here.length).toBeLessThan(3);
});

/** What stands between empty lines, each with the title of its section. */
function blocksOf(page: string): readonly string[] {
  return page.split(/^(?=## )/m).flatMap((section) => {
    const [title, ...blocks] = section.trimEnd().split("\n\n");
    return blocks.map((block) => `${title}\n${block}`);
  });
}

const headOf = (block: string) => block.split("\n", 2).join("\n");
