import { type Cutter, cutAt, type RoundEnd, squareCut } from "./notch.ts";

/** What the end of a member is fitted to. */
export interface Fit {
  /** Name of the member or plate; "pin". */
  readonly to: string;
  readonly cutter: Cutter;
  /** Of a round, from where to where along its axis there is material, from `cutter.point`, mm; null = a plate. */
  readonly reach: readonly [from: number, to: number] | null;
  /** Between the two axes, at most a right angle; of a plate between axis and face. rad. */
  readonly angle: number;
}

export interface MemberEnd {
  readonly joint: string;
  readonly end: RoundEnd;
  /** What it is notched to; empty = square. */
  readonly fits: readonly Fit[];
  /** A square end runs this far past its joint, so that what is notched to it there is carried all round. mm. */
  readonly past: number;
}

/** A tube or bar as it is cut, in the knuckle frame. mm. */
export interface RoundMember {
  readonly name: string;
  readonly kind: "tube" | "bar";
  readonly material: string;
  readonly outer: number;
  /** Radius of its bore; 0 = solid. */
  readonly inner: number;
  /** Joint to joint. */
  readonly length: number;
  readonly ends: readonly [MemberEnd, MemberEnd];
}

/** Everything an end is cut by. */
export function cuttersOf({ end, fits, past }: MemberEnd): readonly Cutter[] {
  return fits.length > 0 ? fits.map(({ cutter }) => cutter) : [squareCut(end, past)];
}

/** From the joint along the member to where its material begins, by whatever cuts deepest. */
export function endFrom(end: MemberEnd, radius: number, wrap: number): number {
  const cuts = cuttersOf(end).map((cutter) => cutAt(end.end, cutter, radius, wrap));
  const met = cuts.filter(({ meets }) => meets);
  return Math.max(...(met.length > 0 ? met : cuts).map(({ from }) => from));
}
