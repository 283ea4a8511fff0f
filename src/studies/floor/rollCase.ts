import { armAngleFor, travelStatus } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { jointOf, PoseStatus } from "../../suspension/poseStatus.ts";
import type { WheelTravels } from "../../suspension/rollCenter.ts";
import { KEPT } from "../limits/frontEndLimit.ts";
import { LimitBorders } from "../limits/limitBorders.ts";
import { LimitCell } from "../limits/limitCell.ts";
import type { Model } from "../model/model.ts";
import type { FloorPose } from "../stances/floorPose.ts";
import { floorAt } from "./floorAt.ts";
import { wheelTravelsInRoll } from "./wheelTravelsInRoll.ts";

/** What is asked of both wheels: the body rolled (radians, + = left side up), or one wheel over a curb (mm). */
export type RollAsked =
  | { readonly kind: "roll"; readonly roll: number }
  | { readonly kind: "curb"; readonly side: Side; readonly lift: number };

/** What a wheel meets on its way from the stance: a limit, or the end of its linkage's reach. */
export interface RollStop {
  readonly side: Side;
  readonly name: string;
  /** mm. */
  readonly travel: number;
}

/** Travel a wheel is asked for and can have, outside the setup's own range. mm. */
export interface UncoveredTravel {
  readonly side: Side;
  /** The end of the range. */
  readonly from: number;
  /** What is asked for, or where the wheel is stopped. */
  readonly to: number;
}

/** One pose of roll or curb at one stance, straight ahead. mm, radians. */
export interface RollCase {
  readonly asked: RollAsked;
  /**
   * `covered`: both wheels keep within the setup's travel, where `check` has each of them. `stopped`: a wheel is stopped
   * before it gets there, and up to that `check` has it. `uncovered`: a wheel can go where `check` does not look.
   */
  readonly state: "covered" | "stopped" | "uncovered";
  /** null = a wheel is out of reach. */
  readonly travels: WheelTravels | null;
  readonly floor: FloorPose | null;
  /** What stops a wheel before it gets there, the first on each side. */
  readonly stops: readonly RollStop[];
  readonly uncovered: readonly UncoveredTravel[];
  /** How much of it there is until the first stop: radians of roll, mm of lift; null = all of it. */
  readonly until: number | null;
}

/** mm. A travel this little past an end is at it. */
export const AT_END = 1e-6;

const SIDES = ["left", "right"] as const;

/** Looks at poses of roll and curb of one model. */
export class RollCases {
  private readonly borders: LimitBorders;
  private readonly cells: Readonly<Record<Side, LimitCell>>;

  constructor(private readonly model: Model) {
    this.borders = new LimitBorders(model);
    this.cells = { left: new LimitCell(model, "left"), right: new LimitCell(model, "right") };
  }

  /** What is asked of both wheels at a stance (mm of travel), where it takes them and what stops them. */
  at(stance: number, asked: RollAsked): RollCase {
    const { model } = this;
    const found =
      asked.kind === "roll" ? wheelTravelsInRoll(model, stance, asked.roll) : overCurb(model, stance, asked);
    // As far as the linkage goes, where it does not go all the way.
    const travels = found.ok ? found.travels : (found.most?.travels ?? { left: stance, right: stance });
    const stops = SIDES.flatMap((side): RollStop[] => {
      const stop = this.firstStop(side, stance, travels[side]);
      if (stop !== null) return [stop];
      return found.ok || found.side !== side ? [] : [{ side, name: found.joint, travel: travels[side] }];
    });
    const stopped = (side: Side) => stops.find((stop) => stop.side === side)?.travel ?? travels[side];
    const uncovered = SIDES.flatMap((side) => uncoveredOn(model, side, stopped(side)));
    return {
      asked,
      state: uncovered.length > 0 ? "uncovered" : stops.length > 0 ? "stopped" : "covered",
      travels: found.ok ? found.travels : null,
      floor: found.ok ? floorAt(model, found.travels, 0) : null,
      stops,
      uncovered,
      until: stops.length === 0 ? null : this.untilFirst(stance, asked, stops),
    };
  }

  /** The first met, on the way from the stance, of the limits that are passed where a wheel is asked to go. */
  private firstStop(side: Side, from: number, to: number): RollStop | null {
    const cell = this.cells[side];
    if (to === from || cell.put(armAngleFor(cell.side, to), 0) !== PoseStatus.Ok) return null;
    const passed = cell.limits.flatMap((_, i) => (cell.margin(i) < -KEPT ? [i] : []));
    let first: RollStop | null = null;
    for (const limit of passed) {
      const { at } = this.borders.alongTravel(0, from, to, { limit, side });
      const isFirst = first === null || Math.abs(at - from) < Math.abs(first.travel - from);
      if (isFirst) first = { side, name: cell.limits[limit]!.name, travel: at };
    }
    return first;
  }

  private untilFirst(stance: number, asked: RollAsked, stops: readonly RollStop[]): number {
    const half = Math.min(...stops.map(({ travel }) => Math.abs(travel - stance)));
    if (asked.kind === "curb") return half;
    const up = asked.roll >= 0 ? -half : half;
    return floorAt(this.model, { left: stance + up, right: stance - up }, 0)?.roll ?? 0;
  }
}

function overCurb(
  { frontEnd }: Model,
  stance: number,
  { side, lift }: Extract<RollAsked, { readonly kind: "curb" }>,
) {
  const up = (travel: number) => ({ left: stance, right: stance, [side]: travel });
  const status = travelStatus(frontEnd[side], stance + lift);
  if (status === PoseStatus.Ok) return { ok: true, travels: up(stance + lift) } as const;
  const end = frontEnd[side].reach.bump.travel;
  const most = end < stance ? null : { travels: up(end) };
  return { ok: false, side, joint: jointOf(status), most } as const;
}

function uncoveredOn({ setup }: Model, side: Side, to: number): UncoveredTravel[] {
  const { droop, bump } = setup.travel;
  if (to > bump + AT_END) return [{ side, from: bump, to }];
  return to < droop - AT_END ? [{ side, from: droop, to }] : [];
}
