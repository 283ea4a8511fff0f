import type { Setup } from "../../setup/types.ts";
import type { CheckEntry } from "../../studies/check.ts";
import { type AnswerState, answerState, type Doubt } from "../../studies/doubts/doubt.ts";
import type { Limit } from "../../studies/map/limit.ts";
import type { NoLimits, SteerLimits } from "../../studies/map/steerLimits.ts";
import type { Model } from "../../studies/model.ts";
import { amountText } from "../../studies/wording/amountText.ts";
import { angleText } from "../../studies/wording/angleText.ts";
import { answerWord } from "../../studies/wording/answerWords.ts";
import { lengthText } from "../../studies/wording/lengthText.ts";
import { partWords } from "../../studies/wording/nearestSurface.ts";
import { lockText } from "../../studies/wording/poseText.ts";
import { heightWords, reportedPose, steerWords } from "../../studies/wording/poseWords.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { backspacingFromOffset } from "../../units/wheelOffset.ts";
import type { TruckAnswer } from "../counter/answerStore.ts";
import { halfTrackAt, surfaceOf, worstOf } from "../counter/counterWords.ts";
import type { NamedTravel } from "../counter/useComparison.ts";
import type { Truck } from "../state/truck.ts";

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

/** The sheet's table, a column a truck; changes are told from the first. Ride height is travel 0, as measured. */
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
  const halves = trucks.map(({ truck }) => halfTrackAt(truck.model, 0));
  const rows = [
    row("Tire and wheel", "", ({ truck }) => plain(wheelText(truck.setup, format))),
    row("Hub face distance", "", ({ truck }) => plain(lengthText(truck.setup.knuckle.hubFace, format))),
    row("Half track at ride height", "", (_, column) => plain(halfTrackText(halves, column, format))),
    row("Nearest over every height and steering angle", "", (one) => worstCell(one, format)),
    ...stances.map((stance, i) =>
      row(`Steers, ${stance.name}`, "", ({ truck, answer }) => {
        const steering = answer.steering?.[i];
        return plain(steering ? steerText(steering, truck.model) : WAIT);
      }),
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

function halfTrackText(halves: readonly (number | null)[], column: number, format: LengthFormat): string {
  const half = halves[column];
  const first = halves[0];
  if (typeof half !== "number") return "–";
  const text = lengthText(half, format);
  if (column === 0 || typeof first !== "number") return text;
  const farther = half - first;
  const amount = lengthText(Math.abs(farther), format);
  if (/^0(\.0*)? /.test(amount)) return `${text}; no change`;
  return `${text}; ${amount} ${farther > 0 ? "farther out" : "farther in"} per side than A`;
}

function worstCell({ truck, answer, doubts }: SheetTruck, format: LengthFormat): SheetCell {
  const { report, failure } = answer;
  if (failure !== null) return plain(`could not be checked: ${failure}`);
  if (report === null) return plain(WAIT);
  const worst = worstOf(report);
  if (worst === null) return plain("nothing is measured");
  const { model } = truck;
  const part = partWords(model, worst.side, worst.part);
  const surface = surfaceOf(worst, model);
  const amount = amountText(worst.gap, format);
  const what =
    worst.verdict === "rubs"
      ? `${surface} rubs the ${part} by ${amount}`
      : `${worst.verdict === "close" ? "close: " : ""}${amount} from the ${surface} to the ${part}`;
  const pose = reportedPose(model, worst.travel, worst.steer);
  const when = worst.together
    ? "always"
    : `${heightWords(worst.travel, model, format)}, ${steerWords(worst.steer, pose, worst.side)}`;
  const isTwin = report.parts.some((entry) => isMirrored(entry, worst));
  const side = `${worst.side} side${isTwin ? ", mirrored on the other" : ""}`;
  const state = answerState(worst.verdict, doubts);
  const withheld = state === worst.verdict ? "" : `${answerWord(state)}: `;
  return { text: `${withheld}${what}, ${side}, ${when}`, word: state };
}

/** Whether an entry is the other side's mirror image of one. */
function isMirrored(entry: CheckEntry, of: CheckEntry): boolean {
  return (
    entry.part === of.part &&
    entry.side !== of.side &&
    Math.abs(entry.gap - of.gap) < 1e-6 &&
    Math.abs(entry.steer + of.steer) < 1e-9
  );
}

/** How far it steers at a height, to the left and to the right. */
export function steerText(steering: SteerLimits | NoLimits, model: Model): string {
  if (!steering.ok) return "cannot stand there";
  const ways = [steering.leftTurn, steering.rightTurn].map(({ touch }) => touch.either);
  const [left, right] = ways.map((limit) => limitText(limit, steering.travel, model));
  return left === right ? `both ways ${left}` : `left ${left}; right ${right}`;
}

function limitText(limit: Limit, travel: number, model: Model): string {
  if (limit.stop === "end") return "to the lock";
  const pose = solvePose(model.frontEnd, travel, limit.at * (1 - 1e-9));
  const side = "side" in limit ? limit.side : "left";
  const far = pose.ok ? angleText(Math.abs(pose[side].steerAngle), 0) : lockText(limit.at);
  if (limit.stop === "touch")
    return `to ${far}, then the ${partWords(model, limit.side, limit.part)} touches`;
  if (limit.stop === "reach") return `to ${far}, then the ${limit.joint} ends`;
  return `to ${far}, past it nothing is proven`;
}

function atRide({ model }: Truck, what: "camber" | "caster" | "toe"): string {
  const pose = solvePose(model.frontEnd, 0, 0);
  if (!pose.ok) return "–";
  const [left, right] = [angleText(pose.left[what], 2), angleText(pose.right[what], 2)];
  return left === right ? left : `left ${left}, right ${right}`;
}
