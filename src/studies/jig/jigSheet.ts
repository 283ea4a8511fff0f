import { type JigTolerances, READING_KEYS, type ReadingKey } from "../../setup/types/asBuiltTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import { mmFromInches } from "../../units/lengthUnits.ts";
import { type AllReadings, type BuiltKnuckle, jigReadingsOf } from "./jigReadings.ts";

/** One line of the jig sheet. mm and radians. */
export interface JigRow {
  /** `difference`: the tape behind less the tape in front. */
  readonly key: ReadingKey | "difference";
  readonly measure: "length" | "angle";
  readonly mustRead: number;
  /** Either way. */
  readonly tolerance: number;
  /** Not needed to know the knuckle; it checks the others. */
  readonly isCheck: boolean;
}

/** What a tape reads from a straightedge clamped off pin height, mm. */
export interface OffHeight {
  readonly by: number;
  /** More by so much above pin height, less by so much below: by sin a, square to the face. */
  readonly costs: number;
  /** The same with the tape held square to the ball joint line instead: by tan a. */
  readonly costsLevel: number;
}

/** Everything a jig needs to be set up for one knuckle, either hand. mm and radians. */
export interface JigSheet {
  readonly knuckle: BuiltKnuckle;
  /** Where the straightedge on the ball joint line is clamped: pin height, read like the other heights. */
  readonly clampAt: number;
  /** Where the straightedge lies across the hub face: the pin's center there. */
  readonly faceAt: number;
  readonly halfLength: number;
  readonly jointHeight: number;
  readonly pinEnd: number;
  /** How much higher than on the base knuckle of the order the pin stands, along the ball joint line; null = no base is known. */
  readonly drop: number | null;
  readonly rows: readonly JigRow[];
  readonly offHeight: OffHeight;
}

/** Shop talk for a slip of the clamp. */
const OFF = mmFromInches(0.25);

const CHECKS: ReadonlySet<JigRow["key"]> = new Set(["pinEndHeight", "lowerToArm", "upperToArm"]);

const TOLERANCES: Readonly<Record<JigRow["key"], keyof JigTolerances>> = {
  front: "tape",
  behind: "tape",
  difference: "difference",
  faceAngle: "faceAngle",
  faceHeight: "height",
  pinEndHeight: "height",
  lead: "lead",
  span: "span",
  armAhead: "steeringArm",
  armOut: "steeringArm",
  armUp: "steeringArm",
  lowerToArm: "steeringArm",
  upperToArm: "steeringArm",
};

/** The knuckle a setup orders, as the jig is to read it. */
export function orderedKnuckle({ knuckle, jig }: Pick<Setup, "knuckle" | "jig">): BuiltKnuckle {
  return { ...knuckle, toe: jig.toe };
}

/** The jig sheet of a setup's knuckle. */
export function jigSheetOf(setup: Pick<Setup, "knuckle" | "jig" | "order">): JigSheet {
  const { jig } = setup;
  const knuckle = orderedKnuckle(setup);
  const readings = jigReadingsOf(knuckle, jig, knuckle.pinHeight);
  return {
    knuckle,
    clampAt: knuckle.pinHeight + jig.jointHeight,
    faceAt: readings.faceHeight,
    halfLength: jig.halfLength,
    jointHeight: jig.jointHeight,
    pinEnd: jig.pinEnd,
    drop: dropOf(setup),
    rows: jigRows(readings, jig.tolerances),
    offHeight: {
      by: OFF,
      costs: OFF * Math.sin(knuckle.pinAngle),
      costsLevel: OFF * Math.tan(knuckle.pinAngle),
    },
  };
}

/** Told by the base knuckle itself where that is known, else as the order gives it. */
function dropOf({ knuckle, order }: Pick<Setup, "knuckle" | "order">): number | null {
  const from = order?.base.pinHeight ?? null;
  return from === null ? (order?.drop ?? null) : knuckle.pinHeight - from;
}

/** The lines of a sheet that asks for some readings; the difference of the tapes after both. */
export function jigRows(readings: AllReadings, tolerances: JigTolerances): readonly JigRow[] {
  const row = (key: JigRow["key"], mustRead: number): JigRow => ({
    key,
    measure: key === "faceAngle" ? "angle" : "length",
    mustRead,
    tolerance: tolerances[TOLERANCES[key]],
    isCheck: CHECKS.has(key),
  });
  return READING_KEYS.flatMap((key) => {
    const own = row(key, readings[key]);
    return key === "behind" ? [own, row("difference", readings.behind - readings.front)] : [own];
  });
}
