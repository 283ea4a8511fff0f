/** How far off numbers may be that nobody told the uncertainty of; one standard deviation each, mm and radians. */
export interface OddsSetup {
  /** Each coordinate of a measured point. */
  readonly points: number;
  /** Of a tire by its size; null = from the tire standard's limits. */
  readonly tire: { readonly sectionWidth: number | null; readonly diameter: number | null };
  /** Of the knuckle as built; null = from the jig's tolerances. */
  readonly knuckle: {
    readonly span: number | null;
    readonly pinHeight: number | null;
    readonly pinLead: number | null;
    readonly pinAngle: number | null;
    readonly hubFace: number | null;
    readonly steeringArm: number | null;
  };
}
