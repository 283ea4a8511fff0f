import { NO_RISE, type StressRise } from "./roundSection.ts";

type Row = readonly [constant: number, root: number, linear: number];
type Curve = readonly [Row, Row, Row, Row];

/**
 * Coefficients of K = C1 + C2 (2h/D) + C3 (2h/D)² + C4 (2h/D)³, each C = a + b √(h/r) + c h/r, of a round shaft with a
 * shoulder fillet: Pilkey, Peterson's Stress Concentration Factors, charts 3.4 (pull), 3.11 (bending), 3.12 (torsion), from
 * memory. `low` for h/r up to 2, `high` above; torsion has one.
 */
const PULL = {
  low: [
    [0.926, 1.157, -0.099],
    [0.012, -3.036, 0.961],
    [-0.302, 3.977, -1.744],
    [0.365, -2.098, 0.878],
  ],
  high: [
    [1.2, 0.86, -0.022],
    [-1.805, -0.346, -0.038],
    [2.198, -0.486, 0.165],
    [-0.593, -0.028, -0.106],
  ],
} as const satisfies Record<string, Curve>;

const BENDING = {
  low: [
    [0.947, 1.206, -0.131],
    [0.022, -3.405, 0.915],
    [0.869, 1.777, -0.555],
    [-0.81, 0.422, -0.26],
  ],
  high: [
    [1.232, 0.832, -0.008],
    [-3.813, 0.968, -0.26],
    [7.423, -4.868, 0.869],
    [-3.839, 3.07, -0.6],
  ],
} as const satisfies Record<string, Curve>;

const TORSION: Curve = [
  [0.905, 0.783, -0.075],
  [-0.437, -1.969, 0.553],
  [1.557, 1.073, -0.578],
  [-1.061, 0.171, 0.086],
];

/**
 * h/r up to which the curves are used; beyond, they are held there. Torsion was fitted up to 4 alone: carried on it comes to
 * what first estimates have for sharp fillets, and held at 4 it would fall a quarter short of them.
 */
const MOST = 20;
/** h/r below which no curve was fitted: there the step all but runs out into its fillet. */
const LEAST = { bending: 0.1, torsion: 0.25 } as const;

/** A sharp shoulder's fillet, by the smaller diameter: what Shigley's first estimates for a sharp fillet take (Table 7-1, from memory). */
const SHARP_FILLET = 1 / 50;

/**
 * By how much a shoulder raises the stress of the smaller diameter (of the nominal stress there). 1 where there is no step.
 * @param fillet radius, mm; null = sharp, `SHARP_FILLET` of the smaller diameter
 */
export function shoulderRise(larger: number, smaller: number, fillet: number | null): StressRise {
  const height = (larger - smaller) / 2;
  if (!(height > 0)) return NO_RISE;
  const radius = fillet ?? SHARP_FILLET * smaller;
  const ratio = height / radius;
  const depth = (2 * height) / larger;
  const at = (least: number) => Math.min(Math.max(ratio, least), MOST);
  const bent = at(LEAST.bending);
  const part = bent <= 2 ? "low" : "high";
  return {
    bending: factor(BENDING[part], bent, depth),
    pull: factor(PULL[part], bent, depth),
    torque: factor(TORSION, at(LEAST.torsion), depth),
  };
}

function factor(curve: Curve, ratio: number, depth: number): number {
  const [c1, c2, c3, c4] = curve.map(([a, b, c]) => a + b * Math.sqrt(ratio) + c * ratio) as [
    number,
    number,
    number,
    number,
  ];
  return Math.max(1, c1 + depth * (c2 + depth * (c3 + depth * c4)));
}
