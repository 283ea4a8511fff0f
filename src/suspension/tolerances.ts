/** Every small number of the suspension room: name, unit, reason. */

/** mm. Wheel center height is solved to this; poses are promised to 1e-9 mm in every length kept. */
export const TRAVEL_TOLERANCE = 1e-11;

/** rad. Step in which the lower arm's reach is scanned before its border is bisected. */
export const REACH_STEP = Math.PI / 180;

/** rad. The arm is never turned further than this from where it was measured: past it a truck is scrap. */
export const REACH_LIMIT = (85 * Math.PI) / 180;

/** Share of an arm's length below which a lever counts as none (dead center at the measured pose). */
export const DEAD_CENTER_SHARE = 1e-6;

/** Factor. Widens proven motion bounds by far more than rounding can spoil them. */
export const MOTION_SLACK = 1 + 1e-9;

/** Share of a sum of squares, widened against rounding at the border of reach: an arc cosine makes most of it. */
export const ROUNDING_SHARE = 1e-14;
