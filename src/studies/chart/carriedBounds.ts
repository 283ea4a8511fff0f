import { GAP_TOLERANCE } from "../../gaps/cells/tolerances.ts";
import { ringApart } from "../../gaps/ring/ringApart.ts";
import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import type { Pair } from "../model/pairs.ts";
import type { Budget } from "../numeric/budget.ts";
import { searchPairBelow } from "../reports/pairSearch.ts";
import { PoseCells } from "../search/poseCells.ts";
import type { SideRange } from "../search/sideRange.ts";
import { restText } from "./alike.ts";
import { firstPlaces } from "./chartOrder.ts";
import { type PoseHints, pairKey } from "./poseHints.ts";
import { type Ranges, seenGap } from "./seenGap.ts";

/** Trucks of a chart along an axis that others lean on. */
const ALONG = 5;

/** mm. Farther than this is far for any truck: nobody asks how far. */
const FAR = 40;

/** mm. How far below its true gap a pair of such a truck may be told. */
const TOLERANCE = 1;

/** rad. By how much more than the trucks' own the arm angles of such a truck are looked at. */
const BESIDE = 1e-6;

/** A truck others lean on, looked at over every pose of all of them. */
interface Anchor {
  readonly model: Model;
  readonly rest: string;
  readonly ranges: Ranges;
  readonly bounds: Map<string, number>;
  readonly seen: Map<string, number>;
}

/** One of these as seen from a truck. */
interface Near {
  readonly anchor: Anchor;
  /** mm. How far the wheel's center is from the other's: outboard along the axis, and across it. */
  readonly shift: number;
  readonly off: number;
}

/**
 * What is known of the gaps of a truck from others of its chart that differ in the place and the shape of the wheel alone. Seen
 * from the knuckle, one ring stands along the axis from the other; at one arm angle and steer no gap differs by more than the two
 * rings do. So a pair that is far apart in one truck is so in its neighbors, without a search.
 */
export class CarriedBounds {
  private readonly anchors = new Map<number, Anchor | null>();
  private places: { readonly columns: readonly number[]; readonly rows: readonly number[] } | null = null;

  /** @param modelAt the truck of a cell, with the travel asked about; null = there is none */
  constructor(
    private readonly columns: number,
    private readonly rows: number,
    private readonly lock: number,
    private readonly hints: PoseHints,
    private readonly modelAt: (column: number, row: number) => Model | null,
  ) {}

  /**
   * What no gap of a pair of some cell's truck is below, mm, as far as others tell; −Infinity where they tell nothing, or less
   * than is needed.
   */
  of(cell: number, model: Model, ranges: Ranges, budget: Budget): (pair: Pair, needed: number) => number {
    const near = this.nearTo(cell, model);
    return (pair, needed) => {
      if (pair.kind === "springOrShock" || needed >= FAR) return Number.NEGATIVE_INFINITY;
      let apart = Number.POSITIVE_INFINITY;
      let from: Anchor | null = null;
      for (const { anchor, shift, off } of near) {
        const other = pairIn(anchor, pair);
        if (other === null || !isComparable(pair, model, anchor, ranges)) continue;
        const far = off + ringApart(pair.ring, other.ring, shift);
        if (far < apart) [apart, from] = [far, anchor];
      }
      if (from === null || this.seenIn(from, pair) - apart < needed) return Number.NEGATIVE_INFINITY;
      const bound = boundIn(from, pair, budget) - apart;
      // Only what is outside of both rings is so by as much.
      return bound > 0 ? bound : Number.NEGATIVE_INFINITY;
    };
  }

  /** The trucks next to a cell that differ from its own in the wheel alone. */
  private nearTo(cell: number, model: Model): readonly Near[] {
    this.places ??= this.placesOf();
    const rest = restText(model);
    const columns = aroundIn(this.places.columns, cell % this.columns);
    const rows = aroundIn(this.places.rows, Math.floor(cell / this.columns));
    return columns.flatMap((column) =>
      rows.flatMap((row): readonly Near[] => {
        const anchor = this.anchorAt(column, row);
        if (anchor === null || anchor.rest !== rest) return [];
        return [{ anchor, ...wheelFrom(anchor.model, model) }];
      }),
    );
  }

  /** Where they are: a few along an axis that moves the wheel alone, everywhere along one that changes the rest of the truck. */
  private placesOf() {
    const corner = this.modelAt(0, 0);
    const rest = corner === null ? null : restText(corner);
    const along = (count: number, other: Model | null) => {
      const isMoved = other === null || rest !== restText(other);
      return firstPlaces(count, isMoved ? count : ALONG);
    };
    return {
      columns: along(this.columns, this.modelAt(this.columns - 1, 0)),
      rows: along(this.rows, this.modelAt(0, this.rows - 1)),
    };
  }

  private anchorAt(column: number, row: number): Anchor | null {
    const at = row * this.columns + column;
    const known = this.anchors.get(at);
    if (known !== undefined) return known;
    const model = this.modelAt(column, row);
    const made = model === null ? null : this.anchorOf(model, column, row);
    this.anchors.set(at, made);
    return made;
  }

  private anchorOf(model: Model, column: number, row: number): Anchor {
    const rest = restText(model);
    const ends = [0, this.columns - 1].flatMap((c) => [0, this.rows - 1].map((r) => [c, r] as const));
    const beside = [
      ...ends,
      ...[0, this.columns - 1].map((c) => [c, row] as const),
      ...[0, this.rows - 1].map((r) => [column, r] as const),
    ];
    const alike = [
      model,
      ...beside.flatMap(([c, r]) => {
        const other = this.modelAt(c, r);
        return other !== null && restText(other) === rest ? [other] : [];
      }),
    ];
    const rangeOf = (side: Side): SideRange => {
      const { frontEnd } = model;
      const arms = alike.flatMap((other) => {
        const { low, high } = limitTravel(other, side);
        return [low, high].map((travel) => armAngleFor(other.frontEnd[side], travel));
      });
      const { droop, bump } = frontEnd[side].reach;
      const wheel = {
        side: frontEnd[side],
        other: null,
        innerAt: side === "left" ? 0 : 3,
        steering: frontEnd.steering,
      } as const;
      return {
        armLow: Math.max(droop.armAngle, Math.min(...arms) - BESIDE),
        armHigh: Math.min(bump.armAngle, Math.max(...arms) + BESIDE),
        steerLow: -this.lock,
        steerHigh: this.lock,
        wheel: { ...wheel, cells: new PoseCells(wheel) },
        low: model.setup.travel.droop,
        high: model.setup.travel.bump,
        start: null,
      };
    };
    const ranges = { left: rangeOf("left"), right: rangeOf("right") };
    return { model, rest, ranges, bounds: new Map(), seen: new Map() };
  }

  private seenIn(anchor: Anchor, pair: Pair): number {
    const key = pairKey(pair);
    const known = anchor.seen.get(key);
    if (known !== undefined) return known;
    const own = pairIn(anchor, pair)!;
    const gap = own.kind === "together" ? FAR : seenGap(own, anchor.ranges[own.side], this.hints).gap;
    anchor.seen.set(key, gap);
    return gap;
  }
}

function pairIn({ model }: Anchor, pair: Pair): Pair | null {
  const key = pairKey(pair);
  return model.pairs.find((one) => pairKey(one) === key) ?? null;
}

/** Whether every pose that counts was looked at there; of what rides together, whether it rides on the same knuckle. */
function isComparable(pair: Pair, { setup }: Model, anchor: Anchor, ranges: Ranges): boolean {
  if (pair.kind === "together")
    return JSON.stringify(setup.knuckle) === JSON.stringify(anchor.model.setup.knuckle);
  const [own, other] = [ranges[pair.side], anchor.ranges[pair.side]];
  return own.armLow >= other.armLow && own.armHigh <= other.armHigh;
}

/** mm. */
function boundIn(anchor: Anchor, pair: Pair, budget: Budget): number {
  const key = pairKey(pair);
  const known = anchor.bounds.get(key);
  if (known !== undefined) return known;
  const own = pairIn(anchor, pair)!;
  const bound =
    own.kind === "together"
      ? own.roughGap(FAR, TOLERANCE) - TOLERANCE - GAP_TOLERANCE
      : searchPairBelow(anchor.model, own, anchor.ranges[own.side], FAR, TOLERANCE, budget).bound;
  if (!budget.cut) anchor.bounds.set(key, bound);
  return bound;
}

/** How far the wheel's center of a truck is from that of another with the same knuckle, in its frame; left and right alike. mm. */
function wheelFrom(from: Model, to: Model): Pick<Near, "shift" | "off"> {
  const [a, b] = [from.frontEnd.left.row, to.frontEnd.left.row];
  const by = [0, 1, 2].map((i) => b[SIDE.wheelCenter + i]! - a[SIDE.wheelCenter + i]!);
  const shift = by[1]! * a[SIDE.pinCos]! - by[2]! * a[SIDE.pinSin]!;
  const sq = by.reduce((sum, v) => sum + v * v, 0) - shift * shift;
  return { shift, off: Math.sqrt(Math.max(0, sq)) };
}

/** The places of a rising list next to one, at most two. */
function aroundIn(places: readonly number[], at: number): readonly number[] {
  const above = places.find((place) => place >= at) ?? places.at(-1)!;
  const below = places.findLast((place) => place <= at) ?? places[0]!;
  return [...new Set([below, above])];
}
