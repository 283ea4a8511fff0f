import { type Doubt, toldVerdict } from "../../../../src/studies/doubts/doubt.ts";
import type { CheckEntry, CheckReport } from "../../../../src/studies/reports/check.ts";
import { NUMBERS } from "../../../../src/studies/wording/comparedNumbers.ts";
import { cardFacts, type TruckAnswer } from "../../../../src/studies/wording/counterFacts.ts";
import { worstFacts } from "../../../../src/studies/wording/gapTexts.ts";
import { type SheetFact, sheetRows } from "../../../../src/studies/wording/sheetRows.ts";
import { isUnproven, verdictFacts } from "../../../../src/studies/wording/verdictFacts.ts";
import { NEAR, nameOf, type Truth } from "./truth.ts";

const IN_DOUBT: readonly Doubt[] = [
  { kind: "fromExample", path: ["knuckle", "hubFace"], text: "not measured" },
];

/** mm. What the check may leave unproven of a gap that it calls clear. */
const SLACK = 0.01;

/** The answer over the whole range: against the pose it names, what always rubs, and its own entries. */
export function judgeVerdict(truth: Truth, report: CheckReport): void {
  const { model, always } = truth;
  const facts = verdictFacts(report, model);
  const { parts } = report;
  for (const entry of parts) judgeEntry(truth, entry);
  const states = new Set(parts.map(({ verdict }) => verdict));
  const whole = states.has("rubs") ? "rubs" : states.has("close") ? "close" : "clear";
  const isOpen = report.cutShort === true && whole !== "rubs";
  truth.claim(
    facts.verdict === (isOpen ? "unfinished" : whole),
    `told ${facts.verdict}, the entries say ${whole}`,
  );
  if (facts.told === null) {
    truth.claim(parts.length === 0, "nothing told of what is measured");
    return;
  }
  const { entry, twin, surface } = facts.told;
  truth.claim(
    isOpen || entry.verdict === whole,
    `the verdict ${whole} is told by one that is ${entry.verdict}`,
  );
  truth.claim(
    always.size > 0
      ? always.has(nameOf(entry))
      : parts.every(({ gap, verdict }) => entry.gap <= gap || (!isOpen && verdict !== whole)),
    `first comes ${nameOf(entry)}, not what rides along and rubs, nor the least of those that ${whole}`,
  );
  truth.claim(
    facts.scope !== "all" || (report.limits.length === 0 && (report.limitedBy ?? []).length === 0),
    "told over the whole range, where less is counted",
  );
  if (twin !== null)
    truth.claim(
      twin.part === entry.part && twin.side !== entry.side && Math.abs(twin.gap - entry.gap) < NEAR,
      `${nameOf(twin)} is told as the twin of ${nameOf(entry)}`,
    );
  judgeSurface(truth, entry, surface);
}

function judgeEntry(truth: Truth, entry: CheckEntry): void {
  const { gap, bound, verdict, travel, steer, side, part } = entry;
  const { allowance } = truth.model.setup;
  const name = nameOf(entry);
  truth.claim(bound <= gap, `${name}: bound ${bound} above its gap ${gap}`);
  truth.claim((verdict === "rubs") === gap < 0, `${name} is ${verdict} at ${gap}`);
  truth.claim(
    verdict !== "clear" || (gap >= allowance && bound >= allowance - SLACK),
    `${name} told clear, proven to ${bound} alone`,
  );
  truth.claim(
    verdict !== "close" || gap < allowance || bound < allowance - SLACK,
    `${name} told close, proven to ${bound}`,
  );
  if (isUnproven(entry, allowance))
    truth.claim(gap >= allowance && bound < allowance, `${name} told not proven at ${gap}, ${bound}`);
  const there = truth.gapOf(travel, steer, side, part);
  if (there !== null) truth.claim(Math.abs(there - gap) < NEAR, `${name} told ${gap}, is ${there}`);
}

/** The surface, by how far from the axle the ring's own point is. */
function judgeSurface(truth: Truth, { travel, steer, side, part }: CheckEntry, surface: string): void {
  if (surface !== "tire" && surface !== "wheel") return;
  const found = truth.at(travel, steer);
  const entry = found?.gaps.find((one) => one.side === side && one.part === part);
  if (!found || !entry) return;
  const { wheelCenter, wheelAxis } = found.pose[side];
  const from = entry.onRing.map((value, axis) => value - wheelCenter[axis]!);
  const along = from.reduce((sum, value, axis) => sum + value * wheelAxis[axis]!, 0);
  const radius = Math.sqrt(Math.max(0, from.reduce((sum, value) => sum + value * value, 0) - along * along));
  const { profile } = truth.model.tire;
  const bead = Math.max(profile[1]!, profile.at(-1)!);
  // Near the bead itself either word is right.
  if (Math.abs(radius - bead) < 1) return;
  truth.claim(
    (surface === "wheel") === radius < bead,
    `${part} told at the ${surface}, ${radius} mm from the axle`,
  );
}

/** The card at every height, in doubt and not, and the cell among the variants. @param travels mm, of the answer */
export function judgeCards(truth: Truth, answer: TruckAnswer, travels: readonly number[]): void {
  const { report } = answer;
  if (report === null) return;
  const { allowance } = truth.model.setup;
  for (const doubts of [[], IN_DOUBT]) {
    travels.forEach((travel, at) => {
      const { state, mark } = cardFacts(answer, at, doubts);
      const what = `the card at ${travel} mm, ${doubts.length} doubts`;
      truth.claim((state === "rubs") === report.parts.some(({ gap }) => gap < 0), `${what} says ${state}`);
      if (state !== "rubs")
        truth.claim((state === "barred") === !truth.canBe(travel, 0), `${what} says ${state}`);
      truth.claim(
        mark !== "clear" ||
          (doubts.length === 0 &&
            !report.cutShort &&
            truth.canBe(travel, 0) &&
            report.parts.every(({ gap }) => gap >= allowance)),
        `${what} is green`,
      );
    });
    const cell = worstFacts(report, truth.model, doubts);
    truth.claim(
      cell.told?.entry === verdictFacts(report, truth.model).told?.entry,
      "the variants' cell tells of another part than the sentence",
    );
    truth.claim(
      cell.state !== "clear" ||
        (doubts.length === 0 && !report.cutShort && report.parts.every(({ gap }) => gap >= allowance)),
      "the variants' cell is green",
    );
  }
}

/** Every row of the sheet. @param stances of the answer, in order */
export function judgeSheet(
  truth: Truth,
  answer: TruckAnswer,
  stances: readonly { readonly name: string; readonly travel: number }[],
): void {
  const { model, format } = truth;
  const rows = sheetRows([{ truck: { model }, answer, doubts: [] }], stances, format);
  const facts = rows.map(({ cells }) => cells[0]!.fact);
  const ofKind = <K extends SheetFact["kind"]>(kind: K) =>
    facts.filter((fact): fact is Extract<SheetFact, { kind: K }> => fact.kind === kind);
  const rest = truth.at(0, 0)?.pose ?? null;
  const [hubFace, half] = ofKind("length");
  truth.claim(hubFace?.mm === model.setup.knuckle.hubFace, "the sheet tells another hub face");
  truth.claim(
    (half?.mm ?? null) === (rest && Math.abs(rest.left.contactPatch[1])),
    "the sheet tells another half track",
  );
  for (const [i, what] of (["camber", "caster", "toe"] as const).entries()) {
    const both = ofKind("angles")[i]!.both;
    truth.claim(
      both?.left === rest?.left[what] && both?.right === rest?.right[what],
      `the sheet tells another ${what}`,
    );
  }
  const steers = ofKind("steers");
  truth.claim(
    steers.length === stances.length,
    `the sheet steers at ${steers.length} of ${stances.length} heights`,
  );
  steers.forEach(({ facts: { stands } }, i) => {
    truth.claim(
      stands === truth.canBe(stances[i]!.travel, 0),
      `the sheet stands at ${stances[i]!.name}: ${stands}`,
    );
  });
  const { report } = answer;
  if (report === null) {
    truth.claim(ofKind("nearest").length === 0 && ofKind("waiting").length === 1, "told before it is known");
    return;
  }
  const [nearest] = ofKind("nearest");
  truth.claim(
    nearest?.state === toldVerdict(report) &&
      nearest.facts.told?.entry === verdictFacts(report, model).told?.entry,
    "the sheet's nearest place is another than the sentence's",
  );
}

/** The numbers that variants are compared by, against the pose at rest. */
export function judgeNumbers(truth: Truth): void {
  const rest = truth.at(0, 0)?.pose.left ?? null;
  const { knuckle, wheel } = truth.model.setup;
  const expected: Readonly<Record<string, number | undefined>> = {
    "Hub-face distance": knuckle.hubFace,
    "Pin height": knuckle.pinHeight,
    "Pin angle": knuckle.pinAngle,
    "Pin lead": knuckle.pinLead,
    "Ball joint span": knuckle.span,
    "Wheel offset": wheel.offset,
    "Rim width": wheel.rimWidth,
    "Tire radius": Math.max(...truth.model.ring.outline.map(([, r]) => r)),
    "Half track": rest?.contactPatch[1],
    "Wheel center above the floor as measured": rest?.wheelCenter[2],
    Camber: rest && Math.asin(-rest.wheelAxis[2]),
    Caster: rest?.caster,
    "Kingpin inclination": rest?.kingpinInclination,
    Toe: rest?.toe,
    "Scrub radius": rest?.scrubRadius,
    "Mechanical trail": rest?.mechanicalTrail,
  } as Record<string, number | undefined>;
  for (const { name, read } of NUMBERS) {
    const told = read(truth.model);
    const is = expected[name];
    truth.claim(
      told === null ? is === undefined : is !== undefined && Math.abs(told - is) < 1e-6,
      `${name} told ${told}, is ${is}`,
    );
  }
}
