import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { Pair } from "../model/pairs.ts";

/**
 * What a field does to gaps, as far as it is known for certain, with the lower arm's angle and the steering held: no gap of a pair
 * changes by more than `most` for each mm of the field.
 */
export interface FieldEffect {
  readonly most: number;
  /** The wheel's center moves along a line of the knuckle's frame, so at one arm angle the travel changes evenly with the field. */
  readonly slides: boolean;
  /** Whether the pair's gap changes at all. */
  readonly moves: (pair: Pair, setup: Setup) => boolean;
}

type Moves = FieldEffect["moves"];

/** The caliper is given from the hub face, and goes with it. */
const isOnHub = ({ partName }: Pair, { hardware }: Setup) =>
  partName === "caliper" && hardware?.caliper?.frame === "hub";

/** Ring, rotor and what is given from the hub face move as one. */
const withHub: Moves = (pair, setup) => !isOnHub(pair, setup);

/** The ring alone moves: rotor and wheel center stand from the hub face. */
const withRing: Moves = ({ solid }) => solid === "ring";

/**
 * Fields that move rigid things, or faces of them, and leave the linkage as it is. The ring slides along the pin, up the steering
 * axis or forward: a signed distance changes by no more than the solid moves. A radius moves a surface by itself, a diameter
 * by half; the allowance moves what is asked for.
 */
const EFFECTS: readonly (readonly [pattern: RegExp, effect: (found: RegExpExecArray) => FieldEffect])[] = [
  [/^knuckle\.(hubFace|pinHeight|pinLead)$/, () => ({ most: 1, slides: true, moves: withHub })],
  [/^wheel\.(offset|backspacing)$/, () => ({ most: 1, slides: true, moves: withRing })],
  [/^hardware\.(\w+)\.radius$/, ([, key]) => still(1, ({ partName }) => partName === partOf(key!))],
  [/^hardware\.rotor\.diameter$/, () => still(0.5, ({ solid }) => solid === "rotor")],
  [/^hardware\.rotor\.(thickness|inboard)$/, () => still(1, ({ solid }) => solid === "rotor")],
  [/^hardware\.caliper\.(min|max)\.\d$/, () => still(1, ({ partName }) => partName === "caliper")],
  [
    /^truck\.body\.(\d+)\.(radius|(min|max)\.\d|points\.\d+\.\d)$/,
    ([, at]) =>
      still(1, ({ kind, name }, { truck }) => kind === "body" && name === truck.body[Number(at)]?.name),
  ],
  [/^allowance$/, () => still(1, () => true)],
];

function still(most: number, moves: Moves): FieldEffect {
  return { most, slides: false, moves };
}

/** A part as a pair names it: `upperBallJoint` is the upper ball joint. */
function partOf(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** Null where the field moves the linkage, the range of poses or the shape of the tire: there values are sampled. */
export function fieldEffect(path: KeyPath): FieldEffect | null {
  const key = path.join(".");
  for (const [pattern, effect] of EFFECTS) {
    const found = pattern.exec(key);
    if (found !== null) return effect(found);
  }
  return null;
}
