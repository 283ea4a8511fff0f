/** A round section's numbers, mm: what stresses and stiffness are worked out with. */
export interface RoundSection {
  readonly diameter: number;
  readonly area: number;
  /** Second moment of area about any diameter; `polar` about the middle, twice that. */
  readonly inertia: number;
  readonly polar: number;
  /** `inertia` by the outer radius: bending stress = moment / modulus. */
  readonly modulus: number;
  /** Largest shear stress by mean shear stress, at the neutral axis: 4/3 of a solid bar (ST-4), toward 2 of a thin tube. */
  readonly shearPeak: number;
  /** Area by the effective one in shear deflection (Cowper 1966, from memory; Poisson's ratio 0.29). */
  readonly shearShape: number;
}

const POISSON = 0.29;

/**
 * A round bar, or a tube of a wall. Z = 0.0982 d³ of a bar (Machinery's Handbook, from memory); the peak of the transverse
 * shear is V Q / I b of the half ring.
 * @param wall null = solid
 */
export function roundSection(diameter: number, wall: number | null): RoundSection {
  const outer = diameter / 2;
  const inner = wall === null ? 0 : outer - wall;
  const area = Math.PI * (outer ** 2 - inner ** 2);
  const inertia = (Math.PI / 4) * (outer ** 4 - inner ** 4);
  // Q of the half ring is 2/3 (R³ − r³), over a width of 2 (R − r).
  const firstMoment = (2 / 3) * (outer ** 3 - inner ** 3);
  const m = inner / outer;
  const hollow = (1 + m * m) ** 2;
  const shearShape =
    ((7 + 6 * POISSON) * hollow + (20 + 12 * POISSON) * m * m) / (6 * (1 + POISSON) * hollow);
  return {
    diameter,
    area,
    inertia,
    polar: 2 * inertia,
    modulus: inertia / outer,
    shearPeak: (firstMoment * area) / (inertia * 2 * (outer - inner)),
    shearShape,
  };
}

/** What a cut through a member or the pin carries: N and N·mm; pull + along, shear and bending by their size. */
export interface SectionForces {
  readonly pull: number;
  readonly shear: number;
  readonly bending: number;
  readonly torque: number;
}

/** By how much a shoulder raises each stress; 1 = nothing. */
export interface StressRise {
  readonly bending: number;
  readonly torque: number;
  readonly pull: number;
}

export const NO_RISE: StressRise = { bending: 1, torque: 1, pull: 1 };

/** Combined stress by the distortion energy (von Mises): √(σ² + 3 τ²). */
export function vonMises(normal: number, shear: number): number {
  return Math.sqrt(normal * normal + 3 * shear * shear);
}

/**
 * The larger of the combined stresses where bending is largest, at the outer fiber, and where transverse shear is, at the
 * neutral axis. MPa.
 */
export function combinedStress(
  section: RoundSection,
  { pull, shear, bending, torque }: SectionForces,
  rise = NO_RISE,
): number {
  const along = (rise.pull * Math.abs(pull)) / section.area;
  const twist = (rise.torque * Math.abs(torque) * section.diameter) / 2 / section.polar;
  const fiber = vonMises(along + (rise.bending * bending) / section.modulus, twist);
  const middle = vonMises(along, twist + (section.shearPeak * shear) / section.area);
  return Math.max(fiber, middle);
}
