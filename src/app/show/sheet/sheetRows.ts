import type { Setup } from "../../../setup/types/types.ts";
import { type AnswerState, answerState, type Doubt } from "../../../studies/doubts/doubt.ts";
import { angleText } from "../../../studies/wording/angleText.ts";
import { answerWord } from "../../../studies/wording/answerWords.ts";
import { halfTrack } from "../../../studies/wording/comparisonWords.ts";
import { lengthText } from "../../../studies/wording/lengthText.ts";
import { steerText, worstText } from "../../../studies/wording/sheetTexts.ts";
import { solvePose } from "../../../suspension/solvePose.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { backspacingFromOffset } from "../../../units/wheelOffset.ts";
import type { Truck } from "../../state/truck.ts";
import type { TruckAnswer } from "../counter/truckAnswer.ts";
import type { NamedTravel } from "../counter/useComparison.ts";

/** One number of the sheet, of one truck. */
export interface SheetCell {
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
  readonly truck: Truck;
  readonly answer: TruckAnswer;
  readonly doubts: readonly Doubt[];
}

const WAIT = "checking…";
const plain = (text: string): SheetCell => ({ text, word: null });

/** The sheet's table, a column a truck. Ride height is travel 0, as measured. */
export function sheetRows(
  trucks: readonly SheetTruck[],
  stances: readonly NamedTravel[],
  format: LengthFormat,
): readonly SheetRow[] {
  const row = (
    label: string,
    plus: string,
    cell: (one: SheetTruck, column: number) => SheetCell,
  ): SheetRow => ({
    ...{ label, plus },
    cells: trucks.map(cell),
  });
  const rows = [
    row("Tire and wheel", "", ({ truck }) => plain(wheelText(truck.setup, format))),
    row("Hub face distance", "", ({ truck }) => plain(lengthText(truck.setup.knuckle.hubFace, format))),
    row("Half track at ride height", "", ({ truck }) => plain(halfText(truck, format))),
    row("Nearest over every height and steering angle", "", (one) => worstCell(one, format)),
    ...stances.map((stance, i) =>
      row(`Steers, ${stance.name}`, "", (one) => plain(steersText(one, i, format))),
    ),
    row("Camber at ride height", "+ out at top", ({ truck }) => plain(atRide(truck, "camber"))),
    row("Caster at ride height", "+ back at top", ({ truck }) => plain(atRide(truck, "caster"))),
    row("Toe at ride height, each wheel", "+ in", ({ truck }) => plain(atRide(truck, "toe"))),
  ];
  return rows;
}

/** The tire's size and the wheel's: inches and backspacing, as they are sold. */
export function wheelText({ tire, wheel }: Setup, format: LengthFormat): string {
  const inches = (mm: number) => String(Number((mm / 25.4).toFixed(2)));
  const name =
    tire.kind === "size"
      ? tire.size
      : tire.kind === "dimensions"
        ? "tire as measured"
        : "tire by its profile";
  const backspacing = lengthText(backspacingFromOffset(wheel.offset, wheel.rimWidth), format);
  return `${name} on ${inches(wheel.rimDiameter)} × ${inches(wheel.rimWidth)} in, backspacing ${backspacing}`;
}

function worstCell({ truck, answer, doubts }: SheetTruck, format: LengthFormat): SheetCell {
  const { report, failure } = answer;
  if (failure !== null) return plain(`could not be checked: ${failure}`);
  if (report === null) return plain(WAIT);
  const state = answerState(report, doubts);
  const withheld = state === report.verdict ? "" : `${answerWord(state)}: `;
  return { text: `${withheld}${worstText(report, truck.model, format)}`, word: state };
}

function steersText({ truck, answer }: SheetTruck, at: number, format: LengthFormat): string {
  const steering = answer.steering?.[at];
  const height = answer.heights?.[at];
  return steering && height !== undefined ? steerText(steering, height, truck.model, format) : WAIT;
}

function halfText({ model }: Truck, format: LengthFormat): string {
  const half = halfTrack(model);
  return half === null ? "–" : lengthText(half, format);
}

function atRide({ model }: Truck, what: "camber" | "caster" | "toe"): string {
  const pose = solvePose(model.frontEnd, 0, 0);
  if (!pose.ok) return "–";
  const [left, right] = [angleText(pose.left[what], 2), angleText(pose.right[what], 2)];
  return left === right ? left : `left ${left}, right ${right}`;
}
