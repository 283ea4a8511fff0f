import { runVerb, type VerbAnswer } from "./verbs.ts";

/** In the file's units: rounding of a gap worked out twice. */
const ALIKE = 1e-6;

interface Entry {
  readonly part: string;
  readonly side: "left" | "right";
  readonly gap: number;
  readonly bound: number;
  readonly travel: number;
  readonly steer: number;
}

interface MapDocument {
  readonly left: Grid;
  readonly right: Grid;
  readonly pastLimit?: readonly (readonly (string | null)[])[];
}

interface Grid {
  readonly gap: readonly (readonly (number | null)[])[];
  readonly part: readonly (readonly (string | null)[])[];
}

/** Where verbs say unlike things of one setup: a line each. @param answers of `--json` */
export function disagreements(text: string, answers: readonly VerbAnswer[]): string[] {
  // Readings are worked out whatever else of a setup is missing or wrong.
  const ofWhole = answers.filter(({ verb, error }) => verb !== "measure" && !isOwnRefusal(error));
  const refused = ofWhole.filter(({ code }) => code === 2);
  if (refused.length > 0 && refused.length < ofWhole.length)
    return [`${refused[0]!.verb} refuses what others take: ${refused[0]!.error.trim()}`];
  const check = documentOf<{ readonly parts: readonly Entry[]; readonly verdict: string }>(answers, "check");
  if (check === null) return [];
  const map = documentOf<MapDocument>(answers, "map");
  return [
    ...check.parts.flatMap((entry) =>
      entry.gap < entry.bound - ALIKE ? [`check: ${entry.part} is below its bound`] : [],
    ),
    ...verdictFault(check.verdict, check.parts),
    ...poseFault(text, check.parts),
    ...(map === null ? [] : mapFaults(map, check.parts)),
  ];
}

/** A refusal that only this verb makes: of an option, or for a block it needs. */
function isOwnRefusal(error: string): boolean {
  return /^standard input: (--|has no (?:airSpring|order)|order\.|alignment\.targets|asBuilt: required|asBuilt\.(?:left|right): the knuckle read there|readings: required|masses: nothing|loads\.spring: nothing|.*: as ordered: )/.test(
    error,
  );
}

function documentOf<T>(answers: readonly VerbAnswer[], verb: string): T | null {
  const answer = answers.find((each) => each.verb === verb);
  return answer === undefined || answer.code === 2 ? null : (JSON.parse(answer.out) as T);
}

function verdictFault(verdict: string, parts: readonly Entry[]): string[] {
  const rubs = parts.some(({ gap }) => gap < 0);
  return rubs === (verdict === "rubs")
    ? []
    : [`check: says ${verdict} and a part ${rubs ? "rubs" : "does not rub"}`];
}

/** The gap told as the worst is the gap of that pose. */
function poseFault(text: string, parts: readonly Entry[]): string[] {
  const [worst] = [...parts].sort((a, b) => a.gap - b.gap);
  if (worst === undefined) return [];
  const options = ["--travel", String(worst.travel), "--steer", String(worst.steer)];
  const { code, out, error } = runVerb(text, { verb: "pose", options }, true);
  // Told with fewer digits than it was found with, a pose right at the end of reach may lie past it.
  if (code === 2)
    return /cannot follow past/.test(error) ? [] : [`pose: refuses what check tells: ${error.trim()}`];
  const { gaps } = JSON.parse(out) as { readonly gaps: readonly Entry[] };
  const there = gaps.find(({ part, side }) => part === worst.part && side === worst.side);
  if (there === undefined) return [`pose: has no ${worst.part}`];
  return Math.abs(there.gap - worst.gap) <= 1e-3
    ? []
    : [`pose: ${worst.part} ${there.gap}, check: ${worst.gap}`];
}

/** No cell that counts is below what check proved of its part. */
function mapFaults(map: MapDocument, parts: readonly Entry[]): string[] {
  return (["left", "right"] as const).flatMap((side) =>
    map[side].gap.flatMap((row, i) =>
      row.flatMap((gap, j) => {
        if (gap === null || (map.pastLimit?.[i]?.[j] ?? null) !== null) return [];
        const part = map[side].part[i]![j];
        const entry = parts.find((each) => each.part === part && each.side === side);
        if (entry === undefined) return [`map: has ${part}, check has not`];
        return gap >= entry.bound - ALIKE
          ? []
          : [`map: ${part} ${side} ${gap}, proven no less than ${entry.bound}`];
      }),
    ),
  );
}
