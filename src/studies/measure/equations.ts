import { RIM_FLANGE_HEIGHT } from "../../gaps/tire/tireOutline.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import { bodyPointName } from "../../setup/blocks/readings/readingPoint.ts";
import type { PointName, Reading, ReadingSide } from "../../setup/types/readingTypes.ts";
import { RIM_FLANGE_WIDTH } from "../../units/wheelOffset.ts";
import type { Side, Unknowns } from "./unknowns.ts";

/** One number that a reading gives: what it would be at some values of the unknowns, and what it is. mm and radians. */
export interface Equation {
  readonly reading: Reading;
  /** Positions of the unknowns it takes. */
  readonly of: readonly number[];
  readonly value: (at: readonly number[]) => number;
  readonly is: number;
  readonly within: number;
}

/** Wheel sizes that put the rim's edge about its center, mm; see `WHEEL_POINTS`. */
export interface RimSizes {
  readonly rimDiameter: number;
  readonly rimWidth: number;
}

/** Points of the right side that have readings of their own: the others are the left ones' mirror images. */
export function pointsReadRight(readings: readonly Reading[]): ReadonlySet<PointName> {
  return new Set(
    readings
      .filter(({ side }) => side === "right")
      .flatMap((reading) => pointsOf(reading).map(baseOf))
      .filter((point) => !isSingle(point)),
  );
}

/** Every point a reading names. */
export function pointsOf(reading: Reading): readonly PointName[] {
  switch (reading.kind) {
    case "between":
      return reading.points;
    case "height":
    case "offset":
    case "ahead":
      return [reading.point];
    case "angle":
      return [`${reading.arm}.frontPivot`, `${reading.arm}.rearPivot`, `${reading.arm}.ballJoint`];
    case "plumb":
      return [reading.point, reading.mark];
    case "stations":
      return reading.stations.flatMap((one, i) => (one ? [bodyPointName(reading.part, i)] : []));
    case "size":
      return reading.of === "track" ? ["wheelCenter"] : [];
  }
}

/** The point whose coordinates are solved for, of one that goes with it. */
export function baseOf(point: PointName): PointName {
  return point === "contactPatch" || point.startsWith("rim") ? "wheelCenter" : point;
}

/** Whether a truck has such a point once, not one a side: where it is, it is. */
function isSingle(point: PointName): boolean {
  return /^steering\.(pitman|idler)\./.test(point);
}

/** What readings say, in numbers; adds the unknowns they take. */
export class EquationMaker {
  readonly #unknowns: Unknowns;
  readonly #right: ReadonlySet<PointName>;
  readonly #rim: RimSizes;

  constructor(unknowns: Unknowns, right: ReadonlySet<PointName>, rim: RimSizes) {
    this.#unknowns = unknowns;
    this.#right = right;
    this.#rim = rim;
  }

  equationsOf(reading: Reading): readonly Equation[] {
    const { within } = reading;
    const one = (places: readonly Place[], value: Equation["value"], is: number): Equation => ({
      reading,
      of: [...new Set(places.flatMap(({ of }) => of))],
      value,
      is,
      within,
    });
    switch (reading.kind) {
      case "between": {
        const [nameA, nameB] = reading.points;
        const a = this.#place(nameA, sideOf(reading.side, 0), nameB);
        const b = this.#place(nameB, sideOf(reading.side, 1), nameA);
        const mirrored = reading.side === "across" ? -1 : 1;
        const value = (at: readonly number[]) => {
          const [p, q] = [a.at(at), b.at(at)];
          return Math.hypot(p[0] - q[0], p[1] - mirrored * q[1], p[2] - q[2]);
        };
        return [one([a, b], value, reading.is)];
      }
      case "height":
      case "offset":
      case "ahead": {
        const point = this.#place(reading.point, sideOf(reading.side, 0));
        const axis = { ahead: 0, offset: 1, height: 2 }[reading.kind];
        if (reading.kind !== "offset" || reading.from === "centerline")
          return [one([point], (at) => point.at(at)[axis]!, reading.is)];
        const frame = this.#size("frameWidth");
        return [one([point, frame], (at) => point.at(at)[1] - frame.at(at)[0] / 2, reading.is)];
      }
      case "angle": {
        const side = sideOf(reading.side, 0);
        const [front, rear, joint] = pointsOf(reading).map((point) => this.#place(point, side));
        const value = (at: readonly number[]) => armAngle(front!.at(at), rear!.at(at), joint!.at(at));
        return [one([front!, rear!, joint!], value, reading.is)];
      }
      case "size": {
        if (reading.of !== "track") {
          const size = this.#size(reading.of);
          return [one([size], (at) => size.at(at)[0], reading.is)];
        }
        const [left, right] = (["left", "right"] as const).map((side) => this.#place("wheelCenter", side));
        return [one([left!, right!], (at) => left!.at(at)[1] + right!.at(at)[1], reading.is)];
      }
      case "plumb": {
        const side = sideOf(reading.side, 0);
        const point = this.#place(reading.point, side);
        const mark = this.#place(reading.mark, side, reading.point);
        return [
          ...([0, 1] as const).map((axis) =>
            one([point, mark], (at) => mark.at(at)[axis] - point.at(at)[axis], 0),
          ),
          one([mark], (at) => mark.at(at)[2], 0),
        ];
      }
      case "stations": {
        const { stick, part, stations } = reading;
        return stations.flatMap((station, i) => {
          if (station === null) return [];
          const [ahead, height, inset] = station;
          const point = this.#place(bodyPointName(part, i), sideOf(reading.side, 0));
          const is: Vec3 = [ahead, stick.offset - inset, stick.height + height];
          return ([0, 1, 2] as const).map((axis) => one([point], (at) => point.at(at)[axis], is[axis]));
        });
      }
    }
  }

  #size(size: Parameters<Unknowns["size"]>[0]): Place {
    const first = this.#unknowns.size(size);
    return { of: [first], at: (at) => [at[first]!, 0, 0] };
  }

  /** A point of one side, in the left-hand frame. */
  #place(name: PointName, side: Side, beside?: PointName): Place {
    const base = baseOf(name);
    const first = this.#unknowns.left(base, beside === undefined ? undefined : baseOf(beside));
    const more = side === "right" && this.#right.has(base) ? this.#unknowns.more(base) : null;
    const move = this.#fromBase(name);
    return {
      of: [first, first + 1, first + 2, ...(more === null ? [] : [more, more + 1, more + 2])],
      at: (at) => {
        const x = at[first]! + (more === null ? 0 : at[more]!);
        const y = at[first + 1]! + (more === null ? 0 : at[more + 1]!);
        const z = at[first + 2]! + (more === null ? 0 : at[more + 2]!);
        if (name === "contactPatch") return [x, y, 0];
        if (side === "right" && isSingle(name)) return [x, -y, z];
        return [x + move[0], y + move[1], z + move[2]];
      },
    };
  }

  #fromBase(name: PointName): Vec3 {
    const { rimDiameter, rimWidth } = this.#rim;
    const [out, radius] = [rimWidth / 2 + RIM_FLANGE_WIDTH, rimDiameter / 2 + RIM_FLANGE_HEIGHT];
    switch (name) {
      case "rimTop":
        return [0, out, radius];
      case "rimBottom":
        return [0, out, -radius];
      case "rimFront":
        return [radius, out, 0];
      case "rimRear":
        return [-radius, out, 0];
      default:
        return [0, 0, 0];
    }
  }
}

interface Place {
  readonly of: readonly number[];
  readonly at: (at: readonly number[]) => Vec3;
}

function sideOf(side: ReadingSide, end: 0 | 1): Side {
  if (side !== "across") return side;
  return end === 0 ? "left" : "right";
}

/** As the `lowerArmAngle` of a stance: in the front view, from the foot of the ball joint on the pivot axis. */
function armAngle(front: Vec3, rear: Vec3, joint: Vec3): number {
  const axis = front.map((value, i) => value - rear[i]!);
  const squared = axis.reduce((sum, value) => sum + value * value, 0);
  const share =
    squared === 0 ? 0.5 : axis.reduce((sum, value, i) => sum + value * (joint[i]! - rear[i]!), 0) / squared;
  return Math.atan2(rear[2] + share * axis[2]! - joint[2], joint[1] - (rear[1] + share * axis[1]!));
}
