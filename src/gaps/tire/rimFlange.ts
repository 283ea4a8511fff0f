/** Height of a J flange over the bead seat, mm: ISO 4000-2 / TRA, from memory, 17.3 to 17.5. */
export const RIM_FLANGE_HEIGHT = 17.5;

/** Wheel center to the rim flange's edge, mm: what a wheel stands on with its tire flat. @param rimDiameter nominal, mm */
export function rimFlangeRadius(rimDiameter: number): number {
  return 0.5 * rimDiameter + RIM_FLANGE_HEIGHT;
}
