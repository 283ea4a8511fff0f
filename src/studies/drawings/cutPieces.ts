import { cross, dot, length, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import type { OrderSetup } from "../../setup/types/orderTypes.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { cutAt, cutThroughWall, pointOn } from "../knuckleSolid/notch.ts";
import {
  cuttersOf,
  endFrom,
  type Fit,
  type MemberEnd,
  type RoundMember,
} from "../knuckleSolid/roundMember.ts";
import { roundMembers } from "../knuckleSolid/roundMembers.ts";
import type { CutListFacts, EndFacts, PieceFacts } from "../wording/pieceWords.ts";

/** The end of a piece of tube or bar as it is cut. */
export interface CutEnd extends EndFacts {
  /** From the joint along the member to the cut, + into the member, every whole degree from the mark line round, mm. */
  readonly outside: Float64Array;
  /** The same for a blade pointed at the tube's axis: no part of the wall is left in the way. A bar has none of its own. */
  readonly through: Float64Array;
}

/** A tube or bar of the cut list. */
export interface CutPiece extends PieceFacts {
  readonly ends: readonly [CutEnd, CutEnd];
}

/** All that is cut for a knuckle, its tubes and bars with their ends. */
export interface CutList extends CutListFacts {
  readonly pieces: readonly CutPiece[];
}

/** What is cut for a build: its pin, its plates, and tubes and bars in the order of its list. */
export function cutListOf(
  build: BuildSetup,
  knuckle: KnuckleSetup,
  order: OrderSetup | null = null,
): CutList {
  const { pin, plates, material } = build;
  const extent = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  const isPaired = order?.side === "pair";
  return {
    made: order && { knuckles: order.quantity * (isPaired ? 2 : 1), isPaired },
    pieces: roundMembers(build, knuckle).map(cutPiece),
    pin: {
      material: pin?.material ?? material,
      thread: order && { callout: order.hub.nutThread, order: order.number },
      steps: pin?.steps.map(({ from, to, ...step }) => ({ ...step, length: to - from })) ?? null,
    },
    plates: plates.map((plate) => ({
      name: plate.name,
      material: plate.material ?? material,
      thickness: plate.thickness,
      size: [extent(plate.outline.map(([u]) => u)), extent(plate.outline.map(([, v]) => v))],
      holes: plate.holes,
    })),
  };
}

/** Templates are worked out at every degree round. */
const WRAPS = 360;

function cutPiece(member: RoundMember): CutPiece {
  const { name, kind, material, outer, inner, length: centers } = member;
  const ends = [cutEnd(member, member.ends[0]), cutEnd(member, member.ends[1])] as const;
  const tips = ends.map(({ outside, through }) => Math.min(...outside, ...through));
  return {
    name,
    kind,
    material,
    diameter: 2 * outer,
    wall: kind === "tube" ? outer - inner : null,
    centers,
    blank: centers - tips[0]! - tips[1]!,
    onMark: centers - ends[0].outside[0]! - ends[1].outside[0]!,
    ends,
    turn: turnBetween(member),
  };
}

function cutEnd({ outer, inner }: RoundMember, memberEnd: MemberEnd): CutEnd {
  const { joint, end, fits } = memberEnd;
  const cutters = cuttersOf(memberEnd);
  const wraps = Array.from({ length: WRAPS }, (_, i) => (2 * Math.PI * i) / WRAPS);
  const outside = Float64Array.from(wraps, (wrap) => endFrom(memberEnd, outer, wrap));
  const metAt = (wrap: number) => cutters.filter((cutter) => cutAt(end, cutter, outer, wrap).meets);
  const through =
    inner === 0
      ? outside
      : Float64Array.from(wraps, (wrap) => {
          const met = metAt(wrap);
          const cuts = (met.length > 0 ? met : cutters).map((cutter) =>
            cutThroughWall(end, cutter, inner, outer, wrap),
          );
          return Math.max(...cuts);
        });
  return {
    joint,
    fittedTo: fits.map(({ to }) => to),
    angle: fits[0]?.angle ?? Math.PI / 2,
    outside,
    through,
    missed: wraps.filter((wrap) => metAt(wrap).length === 0).length,
    overhang: Math.max(0, ...fits.map((fit) => overhangOf(fit, memberEnd, outer, wraps, outside))),
  };
}

function overhangOf(
  { cutter, reach }: Fit,
  { end }: MemberEnd,
  radius: number,
  wraps: readonly number[],
  outside: Float64Array,
): number {
  if (cutter.kind === "plane" || reach === null) return 0;
  return Math.max(
    0,
    ...wraps.map((wrap, i) => {
      const onTube = pointOn(end, outside[i]!, radius, wrap);
      const along = dot(sub(onTube, cutter.point), cutter.axis);
      return Math.max(reach[0] - along, along - reach[1]);
    }),
  );
}

/** A notch whose axes are this near a right angle has no long side, rad. */
const RIGHT = 1e-6;
/** Half a turn, less rounding. */
const HALF = Math.PI * (1 - 1e-9);

function turnBetween({ ends: [first, second] }: RoundMember): number | null {
  const [a, b] = [longSide(first), longSide(second)];
  if (a === null || b === null) return null;
  const { along } = first.end;
  const turn = Math.atan2(dot(cross(a.way, b.way), along), dot(a.way, b.way));
  if (!a.isEven && !b.isEven) return turn;
  const positive = turn < 0 ? turn + Math.PI : turn;
  return positive >= HALF ? 0 : positive;
}

/** Which way the long side of an end lies, square to the member; even = both ways alike; null = the end is square. */
function longSide({ end, fits }: MemberEnd): { readonly way: Vec3; readonly isEven: boolean } | null {
  const [fit] = fits;
  if (fit === undefined) return null;
  const { cutter } = fit;
  const isPlane = cutter.kind === "plane";
  const axis = isPlane ? cutter.normal : cutter.axis;
  const lean = dot(axis, end.along);
  const square = sub(axis, scale(end.along, lean));
  if (!(length(square) > 1e-9)) return null;
  // Toward a round's axis where the angle to it is acute the saddle begins later: the long side is the other one.
  return { way: scale(square, isPlane || lean <= 0 ? 1 : -1), isEven: !isPlane && Math.abs(lean) < RIGHT };
}
