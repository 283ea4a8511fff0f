/**
 * How a rigid body may move within a cell of two inputs (`arm`, `steer`) about the cell's middle: each
 * input's half range h, the body's velocity per unit of input at the middle (turn ω; slide v of the body
 * point that is at the reference place there), and upper bounds of how much ω and v can differ anywhere
 * in the cell. All zero: one pose. mm, rad.
 */
export const MOTION = {
  armHalf: 0,
  steerHalf: 1,
  armTurn: 2,
  armSlide: 5,
  steerTurn: 8,
  steerSlide: 11,
  /** Upper bounds over the cell: |ω − ω at the middle|, |v − v at the middle|, |ω|. */
  armTurnOff: 14,
  armSlideOff: 15,
  armTurnMost: 16,
  steerTurnOff: 17,
  steerSlideOff: 18,
  steerTurnMost: 19,
} as const;

/** Numbers in a motion row. */
export const MOTION_ROW = 20;
