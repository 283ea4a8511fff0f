/** Names a trimmed body part among the fields. */
export const TRIM = "trim";

/** Names a wheel spacer among the fields. */
export const SPACER = "spacer";

/**
 * What may be changed, least effort first: a stop is set, a spacer or another tire or wheel is put on, a panel is cut, a knuckle is
 * made anew. Common practice, no source; whoever asks may give another order.
 */
export const EFFORT: readonly string[] = [
  "limits.steeringStop.angle",
  "limits.bumpStop.travel",
  "travel.bump",
  "travel.droop",
  "truck.steering.stroke",
  "truck.steering.swing",
  SPACER,
  "wheel.backspacing",
  "wheel.offset",
  "tire.sectionWidth",
  "tire.diameter",
  TRIM,
  "knuckle.hubFace",
  "knuckle.pinHeight",
  "knuckle.pinAngle",
];
