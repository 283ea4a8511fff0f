/**
 * The constants of one side as a flat row, so that a sweep touches one small block of memory.
 * Left-hand frame: vehicle axes for the left side; the right side is stored mirrored (y turned) and
 * is therefore a left side too. mm.
 */
export const SIDE = {
  /** Foot of the lower ball joint on the lower pivot line. */
  lowerFoot: 0,
  /** From that foot to the ball joint as measured. */
  lowerRadial: 3,
  /** Same length, a quarter turn on, in the direction that lifts the ball joint. */
  lowerQuarter: 6,
  upperFoot: 9,
  upperRadial: 12,
  upperQuarter: 15,
  span: 18,
  /** Which of the two meetings of circle and sphere is taken: +1 or −1. */
  upperRoot: 19,
  /** Outer tie rod end in the knuckle frame. */
  steeringArm: 20,
  pinCos: 23,
  pinSin: 24,
  /** Wheel center in the knuckle frame. */
  wheelCenter: 25,
  /** Mounting face outboard of the wheel center, along the pin. */
  offset: 28,
  tieRodLength: 29,
  tieRodRoot: 30,
  loadedRadius: 31,
} as const;

/** Numbers in a side row. */
export const SIDE_ROW = 32;
