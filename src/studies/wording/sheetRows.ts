import type { Setup } from "../../setup/types/types.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { backspacingFromOffset } from "../../units/wheelOffset.ts";
import { type AnswerState, answerState, type Doubt } from "../doubts/doubt.ts";
import type { Model } from "../model/model.ts";
import { answerWord } from "./answerWords.ts";
import { halfTrack } from "./comparisonWords.ts";
import type { TruckAnswer } from "./counterFacts.ts";
import { angleText, lengthText } from "./lengths.ts";
import { steerText, type TurnFacts, turnFacts, worstText } from "./sheetTexts.ts";
import { type VerdictFacts, verdictFacts } from "./verdictFacts.ts";

/** In the place of what is not known yet. */
export const CHECKING = "checking…";

/** One number of the sheet, of one truck, before it is words. mm, radians. */
export type SheetFact =
  | { readonly kind: "wheel" }
  /** null = the wheels cannot stand as measured. */
  | { readonly kind: "length"; readonly mm: number | null }
  | { readonly kind: "angles"; readonly both: { readonly left: number; readonly right: number } | null }
  | { readonly kind: "nearest"; readonly facts: VerdictFacts; readonly state: AnswerState }
  | { readonly kind: "steers"; readonly facts: TurnFacts }
  | { readonly kind: "waiting" }
  | { readonly kind: "failed"; readonly why: string };

/** The same as it is printed. */
export interface SheetCell {
  readonly fact: SheetFact;
  readonly text: string;
  /** A state, to be marked with its shape; null = it is none. */
  readonly word: AnswerState | null;
}

/** One line of the sheet's table. */
export interface SheetRow {
  readonly label: string;
  /** What a plus sign means; "" = it has none. */
  readonly plus: string;
  readonly cells: readonly SheetCell[];
}

/** A truck with what is known of it. */
export interface SheetTruck {
  readonly truck: { readonly model: Model };
  readonly answer: TruckAnswer;
  readonly doubts: readonly Doubt[];
}

/** The sheet's table, a column a truck. As measured is travel 0. */
export function sheetRows(
  trucks: readonly SheetTruck[],
  stances: readonly { readonly name: string; readonly travel: number }[],
  format: LengthFormat,
): readonly SheetRow[] {
  const row = (label: string, plus: string, factOf: (one: SheetTruck) => SheetFact): SheetRow => ({
    label,
    plus,
    cells: trucks.map((one) => {
      const fact = factOf(one);
      const word = fact.kind === "nearest" ? fact.state : null;
      return { fact, text: factText(fact, one.truck.model, format), word };
    }),
  });
  return [
    row("Tire and wheel", "", () => ({ kind: "wheel" })),
    row("Hub-face distance", "", ({ truck }) => ({ kind: "length", mm: truck.model.setup.knuckle.hubFace })),
    row("Half track, as measured", "", ({ truck }) => ({ kind: "length", mm: halfTrack(truck.model) })),
    row("Scrub radius, as measured", "+ tire outside the steering axis", ({ truck }) =>
      scrubFact(truck.model),
    ),
    row("Nearest over every height and steering angle", "", nearestFact),
    ...stances.map(({ name }, at) => row(`Steers, ${name}`, "", (one) => steersFact(one, at, format))),
    row("Camber, as measured", "+ out at top", ({ truck }) => anglesFact(truck.model, "camber")),
    row("Caster, as measured", "+ back at top", ({ truck }) => anglesFact(truck.model, "caster")),
    row("Toe of each wheel, as measured", "+ in", ({ truck }) => anglesFact(truck.model, "toe")),
  ];
}

/** A truck's nearest place over every height and steering angle, as the sheet has it: what a list of wheels tells of each. */
export function nearestCell(one: SheetTruck, format: LengthFormat): SheetCell {
  const fact = nearestFact(one);
  return {
    fact,
    text: factText(fact, one.truck.model, format),
    word: fact.kind === "nearest" ? fact.state : null,
  };
}

function nearestFact({ truck, answer, doubts }: SheetTruck): SheetFact {
  const { report, failure } = answer;
  if (failure !== null) return { kind: "failed", why: failure };
  if (report === null) return { kind: "waiting" };
  const state = answerState(report, doubts);
  return { kind: "nearest", facts: verdictFacts(report, truck.model), state };
}

function steersFact({ truck, answer }: SheetTruck, at: number, format: LengthFormat): SheetFact {
  const steering = answer.steering?.[at];
  const height = answer.heights?.[at];
  if (answer.failure !== null && !steering) return { kind: "failed", why: answer.failure };
  if (!steering || height === undefined) return { kind: "waiting" };
  return { kind: "steers", facts: turnFacts(steering, height, truck.model, format) };
}

function anglesFact({ frontEnd }: Model, what: "camber" | "caster" | "toe"): SheetFact {
  const pose = solvePose(frontEnd, 0, 0);
  return { kind: "angles", both: pose.ok ? { left: pose.left[what], right: pose.right[what] } : null };
}

function scrubFact({ frontEnd }: Model): SheetFact {
  const pose = solvePose(frontEnd, 0, 0);
  return { kind: "length", mm: pose.ok ? pose.left.scrubRadius : null };
}

function factText(fact: SheetFact, model: Model, format: LengthFormat): string {
  switch (fact.kind) {
    case "wheel":
      return wheelText(model.setup, format);
    case "length":
      return fact.mm === null ? "–" : lengthText(fact.mm, format);
    case "angles": {
      if (fact.both === null) return "–";
      const [left, right] = [angleText(fact.both.left, 2), angleText(fact.both.right, 2)];
      return left === right ? left : `left ${left}, right ${right}`;
    }
    case "nearest": {
      const { facts, state } = fact;
      const withheld = state === facts.verdict ? "" : `${answerWord(state, model.setup)}: `;
      return `${withheld}${worstText(facts, model, format)}`;
    }
    case "steers":
      return steerText(fact.facts, model, format);
    case "waiting":
      return CHECKING;
    case "failed":
      return `could not be checked: ${fact.why}`;
  }
}

/** The tire's size and the wheel's: inches and backspacing, as they are sold. */
export function wheelText(
  {
    tire,
    wheel,
  }: { readonly tire: Setup["tire"]; readonly wheel: Omit<Setup["wheel"], "barrelDiameter" | "center"> },
  format: LengthFormat,
): string {
  const inches = (mm: number) => String(Number((mm / 25.4).toFixed(2)));
  const backspacing = lengthText(backspacingFromOffset(wheel.offset, wheel.rimWidth), format);
  return `${tireName(tire)} on ${inches(wheel.rimDiameter)} × ${inches(wheel.rimWidth)} in, backspacing ${backspacing}`;
}

/** The same with its offset, signed: for who buys by that. */
export function wheelOffsetText(fit: Parameters<typeof wheelText>[0], format: LengthFormat): string {
  return `${wheelText(fit, format)}, offset ${lengthText(fit.wheel.offset, format)}`;
}

function tireName(tire: Setup["tire"]): string {
  switch (tire.kind) {
    case "size":
      return tire.size;
    case "dimensions":
      return "tire as measured";
    case "profile":
      return "tire by its profile";
  }
}
