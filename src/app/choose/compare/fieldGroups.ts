/** What a builder of knuckles changes most; it stands above the blocks. */
const OFTEN = [
  "knuckle.hubFace",
  "knuckle.pinHeight",
  "knuckle.pinAngle",
  "wheel.backspacing",
  "tire.sectionWidth",
  "tire.diameter",
  "truck.steering.innerEnd[2]",
  "knuckle.steeringArm[2]",
  "limits.bumpStop.travel",
];

/** A field of a list of many. */
export interface NamedField {
  readonly key: string;
  /** What it stands under. */
  readonly group: string;
  readonly name: string;
}

/**
 * Fields by their blocks, those changed most often first and there alone: a list with one choice twice takes the second for the
 * first. Of what is sought only what holds every word of it, each in its block.
 */
export function fieldGroups(
  named: readonly NamedField[],
  sought: string,
): readonly (readonly [group: string, inIt: readonly NamedField[]])[] {
  const words = sought.toLowerCase().split(/\s+/).filter(Boolean);
  const often = words.length > 0 ? [] : OFTEN.flatMap((key) => named.find((one) => one.key === key) ?? []);
  const blocks = new Map<string, NamedField[]>();
  for (const one of named) {
    const text = `${one.group} ${one.name}`.toLowerCase();
    if (words.every((word) => text.includes(word)) && !often.includes(one))
      blocks.set(one.group, [...(blocks.get(one.group) ?? []), one]);
  }
  return often.length === 0 ? [...blocks] : [["Changed most often", often], ...blocks];
}
