import { isWithin, type KeyPath } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { ASSUMED_LAYOUT } from "../../setup/worksheet/assumedLayout.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { Doubt } from "../doubts/doubt.ts";
import type { Model } from "../model/model.ts";
import { gapsAt } from "../reports/gapsAt.ts";
import { isTypedOver } from "../worksheet/withReadings.ts";
import { assumedCount, assumedName } from "./assumedWords.ts";
import { amountWords } from "./lengths.ts";
import { partWords } from "./nearestSurface.ts";

/** Numbers to be read next are told up to so many. */
const MOST_TOLD = 3;

/**
 * What a truck of readings tells against itself: it stood as it was measured, and by its numbers it would touch something there. None
 * where no number is assumed, or nothing touches, and none of a variant or where something else was typed over what was read: no
 * truck was measured as that.
 * @param document what the setup was made of, its variant's patch applied: it names the numbers to read
 */
export function standingDoubts(model: Model, document: unknown, format: LengthFormat): readonly Doubt[] {
  const { setup, frontEnd } = model;
  // Sizes of what the knuckle is built of move no gap.
  const fields = assumedFields(setup).filter(([block]) => block !== "build");
  if (setup.variant !== null || setup.readings.length === 0 || fields.length === 0) return [];
  const pose = solvePose(frontEnd, 0, 0);
  if (!pose.ok) return [];
  // What rides together touches at every pose, and tells of the parts and not of how the truck stood.
  const touching = gapsAt(model, pose).filter(({ gap, together }) => gap < 0 && together !== true);
  const [first, ...others] = touching;
  if (first === undefined || isTypedOver(document)) return [];
  const worst = others.reduce((deepest, one) => (one.gap < deepest.gap ? one : deepest), first);
  const next = readNext(worst.part, setup, fields);
  const names = next.map((path) => ofPart(assumedName(path, document))).join("; ");
  const part = partWords(model, worst.side, worst.part);
  return [
    {
      kind: "assumed",
      path: next[0] ?? fields[0]!,
      text: `As measured, standing straight ahead, this truck would already touch ${/^the /i.test(part) ? part : `the ${part}`} by ${amountWords(worst.gap, format)}. Look: if it does not, a number is wrong. Read these next: ${names}.`,
    },
  ];
}

/** That a body part to be trimmed stands where nobody has read it; null = all of it is read or typed. */
export function assumedTrimSentence(part: string, setup: Setup, document: unknown): string | null {
  const at = bodyPath(part, setup);
  if (at === null || !assumedFields(setup).some((path) => isWithin(path, at))) return null;
  const count = assumedCount([...at, "points"], document);
  const where = count === null ? "" : ` at ${count.assumed} of ${count.all} points`;
  return `The ${part} is assumed${where}: read it before you cut.`;
}

/** What nobody has read of a truck of readings; none of any other. */
function assumedFields({ fromExample }: Pick<Setup, "fromExample">): readonly KeyPath[] {
  return fromExample?.of === ASSUMED_LAYOUT ? fromExample.fields : [];
}

/** Those first that place what touches, then wheel and tire, then the rest. */
function readNext(part: string, setup: Setup, fields: readonly KeyPath[]): readonly KeyPath[] {
  const at = bodyPath(part, setup);
  const rank = (path: KeyPath) => {
    if (at !== null && isWithin(path, at)) return path.includes("points") ? 0 : 1;
    return path[0] === "wheel" || path[0] === "tire" ? 2 : 3;
  };
  // The order of the file within each.
  return [0, 1, 2, 3].flatMap((one) => fields.filter((path) => rank(path) === one)).slice(0, MOST_TOLD);
}

/** `fender lip: points, 6 of 7` of the name that a field has in a form. */
function ofPart(name: string): string {
  return name.replace(/^body parts “(.+)”/u, "$1");
}

function bodyPath(part: string, { truck }: Setup): KeyPath | null {
  const at = truck.body.findIndex(({ name }) => name === part);
  return at < 0 ? null : ["truck", "body", at];
}
