import { describeValue } from "../../setup/reading/describeValue.ts";
import { MAX_NAMED } from "../../setup/reading/limits.ts";
import { type KeyPath, keyText } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import { boltPatternText } from "../../units/boltPattern.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { taperWords } from "../../units/taper.ts";
import { threadText } from "../../units/threadCallout.ts";
import { nearestWord } from "../../units/words.ts";
import type { Misfit } from "../order/misfit.ts";
import { LEAST_ENGAGED_DIAMETERS } from "../order/misfits.ts";
import { fieldName } from "./fieldName.ts";
import { engagedThreads, sizeText } from "./orderTexts.ts";

/** What of an order does not go together, as an issue of the setup: the key to mend, what stands there, the mend. */
export function orderIssue(misfit: Misfit, file: string, format: LengthFormat): SetupIssue {
  if (misfit.kind === "does not assemble")
    return { ...misfit.issue, mend: `as ordered: ${misfit.issue.mend}` };
  const [value, mend] = valueAndMend(misfit, (mm) => sizeText(mm, format));
  return { file, key: keyText(misfit.at), value, mend };
}

/** What does not go together as a sentence of its own. @param isNamed with the field's name, where it does not stand beside it */
export function orderMisfitSentence(misfit: Misfit, format: LengthFormat, isNamed: boolean): string {
  const { value, mend } = orderIssue(misfit, "", format);
  const name = isNamed ? orderPlaceWords(misfit.at) : "";
  const what = [name, value].filter((text) => text !== "").join(", ");
  return `${what === "" ? "" : `${what}: `}${mend}.`;
}

/** `Upper ball joint, taper reamed in the knuckle`; "" = the order as a whole. */
export function orderPlaceWords(at: KeyPath): string {
  if (at.length < 2) return "";
  if (at[0] === "build") return `Pin of the build, ${lowerFirst(fieldName(at, {}))}`;
  const block = BLOCK_WORDS[String(at[1])];
  const field = fieldName(at, {});
  if (block === undefined) return field;
  return field === "" || at.at(-1) === "item" ? block : `${block}, ${lowerFirst(field)}`;
}

function lowerFirst(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}

const BLOCK_WORDS: Readonly<Record<string, string>> = {
  upperBallJoint: "Upper ball joint",
  lowerBallJoint: "Lower ball joint",
  brake: "Brake",
  hub: "Hub",
  wheel: "Wheel",
  steeringArm: "Steering arm",
};

function valueAndMend(
  misfit: Exclude<Misfit, { kind: "does not assemble" }>,
  length: (mm: number) => string,
): readonly [value: string, mend: string] {
  switch (misfit.kind) {
    case "unknown item":
      return [describeValue(misfit.item), unknownMend(misfit.item, misfit.names, "in the catalog")];
    case "unknown stance":
      return [describeValue(misfit.stance), unknownMend(misfit.stance, misfit.names, "among the stances")];
    case "tapers differ":
      return [
        taperWords(misfit.seat),
        `differs from the stud's taper, ${taperWords(misfit.stud)}: the stud would sit on one edge; ream the seat to the stud, or choose a ball joint with this taper`,
      ];
    case "too little engaged":
      return [
        length(misfit.engaged),
        `is ${engagedThreads(misfit.engaged, misfit.thread)} of ${threadText(misfit.thread)}; screw it in by at least ${length(misfit.least)}, ${LEAST_ENGAGED_DIAMETERS} diameters (common practice)`,
      ];
    case "shank too short":
      return [
        length(misfit.shank),
        `must be at least ${length(misfit.least)}, the thread engaged and the jam nut; choose a longer rod end`,
      ];
    case "threads differ":
      return [
        threadText(misfit.thread),
        `does not screw into the arm's ${threadText(misfit.other)}; make both the same thread and hand`,
      ];
    case "patterns differ":
      return [
        boltPatternText(misfit.pattern),
        `the ${misfit.what} does not bolt to the hub, which has ${boltPatternText(misfit.other)}; choose one with the same holes and circle`,
      ];
    case "bore too small":
      return [
        length(misfit.bore),
        misfit.what === "wheel"
          ? `does not pass over the hub's pilot of ${length(misfit.over)}; bore the wheel out, or choose another`
          : `does not pass over the hub's register of ${length(misfit.over)}; bore the hat out, or choose another rotor`,
      ];
    case "no step down":
      return [length(misfit.diameter), `${STEP_MENDS[misfit.what]} ${length(misfit.inboard)}; ${STEP_DOWN}`];
    case "seat on the pin":
      return [
        misfit.diameter === null ? "the pin ends before" : length(misfit.diameter),
        `the ${misfit.what} sits from ${length(misfit.from)} to ${length(misfit.to)} along the pin and has a bore of ${length(misfit.bore)}; ${PIN_MEND}`,
      ];
    case "bearing off its seat":
      return [
        length(misfit.center),
        `the ${misfit.what} sits from ${length(misfit.from)} to ${length(misfit.to)} along the pin; ${PIN_MEND}`,
      ];
    case "pin end":
      return [
        length(misfit.end),
        `with this hub and hub face the pin ends at ${length(misfit.wanted)}; ${PIN_MEND}`,
      ];
    case "bearings overlap":
      return [
        length(misfit.seat),
        `must be at most ${length(misfit.least)}, where the inner bearing ends; the two bearings overlap`,
      ];
    case "no room on the pin":
      return [
        length(misfit.shoulder),
        `reaches the steering axis: the hub face is ${length(misfit.hubFace)} from it; order a wider hub face or a shorter hub`,
      ];
    case "caliper in the wheel":
      return caliperMend(misfit, length);
    case "rotor in the barrel":
      return [
        length(misfit.diameter),
        `does not go into the barrel, ${length(misfit.barrelDiameter)} across; choose a smaller rotor or a larger wheel`,
      ];
    case "rim too small":
      return [
        length(misfit.rim),
        `the brake is made for rims of ${length(misfit.least)} and more; choose a larger wheel or a smaller brake`,
      ];
  }
}

const PIN_MEND =
  "move the pin's steps and bearings to where this hub face has them, or give build.pin.forHubFace, and they come along with it";

const STEP_DOWN = "the pin must step down outboard, or what sits inboard cannot be slid on";

const STEP_MENDS = {
  "inner bearing": "must be less than the seal's",
  "outer bearing": "must be less than the inner bearing's",
  "nut thread": "must be at most the outer bearing's",
} as const;

function caliperMend(
  { what, depth, reach, barrelDiameter }: Extract<Misfit, { kind: "caliper in the wheel" }>,
  length: (mm: number) => string,
): readonly [string, string] {
  const value = `reaches ${length(reach)} from the wheel's axis`;
  if (what === "wheel center")
    return [
      value,
      `runs into the wheel's center by ${length(depth)}; choose a wheel with more room behind its center, a smaller caliper, or a rotor seat farther inboard`,
    ];
  return [
    value,
    `does not clear the wheel's barrel, ${length(barrelDiameter)} across: they overlap by ${length(depth)}; choose a wheel with a larger barrel or a smaller caliper`,
  ];
}

function unknownMend(name: string, names: readonly string[], where: string): string {
  if (names.length === 0)
    return `there is none ${where} at all; name a catalog that has it, or give its numbers`;
  const near = nearestWord(name.slice(0, 200), names);
  const hint = near === null ? "" : `; did you mean ${JSON.stringify(near)}?`;
  const some = names.slice(0, MAX_NAMED).map((one) => JSON.stringify(one));
  return `is not ${where}${hint}${near === null ? "; there are" : " There are"} ${some.join(", ")}${names.length > MAX_NAMED ? ", …" : ""}`;
}
