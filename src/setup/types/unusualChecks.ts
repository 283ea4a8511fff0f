/** Names of the checks for plausible slips, see `studies/plausibility`; a setup confirms what they find by them. */
export const UNUSUAL_CHECKS = [
  "fileUnits",
  "leftRight",
  "tenTimes",
  "farAway",
  "size",
  "hubFace",
  "backspacing",
  "loadedRadius",
  "buildSize",
  "loadMultiple",
  "jigReading",
  "span",
  "armAngle",
  "steeringAxis",
  "camber",
  "tieRodAcross",
  "rideHeight",
  "lipTrack",
  "lipInTire",
] as const;

export type UnusualCheck = (typeof UNUSUAL_CHECKS)[number];
