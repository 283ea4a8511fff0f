/** How far a reading off the jig may be from what the sheet asks for. mm and radians. */
export interface JigTolerances {
  /** Either tape, straightedge to straightedge. */
  readonly tape: number;
  /** The tape behind less the tape in front: the toe. */
  readonly difference: number;
  readonly faceAngle: number;
  /** Heights of the pin along the ball joint line. */
  readonly height: number;
  readonly lead: number;
  readonly span: number;
  /** Each place and each distance of the outer tie rod end. */
  readonly steeringArm: number;
}

/** How the jig is laid out; see `public/docs/jig-and-as-built.md`. mm and radians. */
export interface JigSetup {
  /** From the ball joint line to the marks in front and behind at which the tape is read. */
  readonly halfLength: number;
  /** How high the lower ball joint center stands above the jig's table; 0 = heights are read from that center. */
  readonly jointHeight: number;
  /** How far outboard of the hub face, along the pin, the height of the pin's outer end is read. */
  readonly pinEnd: number;
  /** Built into the knuckle on purpose: the pin turned toward toe-in from square to the jig's straightedge. */
  readonly toe: number;
  readonly tolerances: JigTolerances;
}

/** Readings of one knuckle, by their keys in the file, in the order of the sheet. */
export const READING_KEYS = [
  "front",
  "behind",
  "faceAngle",
  "faceHeight",
  "pinEndHeight",
  "lead",
  "span",
  "armAhead",
  "armOut",
  "armUp",
  "lowerToArm",
  "upperToArm",
] as const;

export type ReadingKey = (typeof READING_KEYS)[number];

/** What was read off the jig of one knuckle, mm and radians; left out = not read. */
export type JigReadings = Readonly<Partial<Record<ReadingKey, number>>>;

/** One knuckle's readings, and where the straightedge was clamped for its tapes (mm, null = at pin height). */
export interface KnuckleReadings {
  readonly readings: JigReadings;
  readonly clampedAt: number | null;
}

/** How well readings are known: one standard deviation each. mm and radians. */
export interface ReadingAccuracy {
  readonly tape: number;
  readonly angle: number;
  readonly height: number;
}

/** The knuckles as they came off the jig; null = nothing was read on that side. */
export interface AsBuiltSetup {
  readonly left: KnuckleReadings | null;
  readonly right: KnuckleReadings | null;
  readonly within: ReadingAccuracy;
}
