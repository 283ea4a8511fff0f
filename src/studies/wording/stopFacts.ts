import type { Side } from "../../suspension/frontEnd.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { WayDown } from "../map/lowestTravels.ts";
import type { SteerLimits } from "../map/steerLimits.ts";
import type { Stop } from "../map/stop.ts";
import type { Model } from "../model/model.ts";
import { nearestSurface, partWords, type Surface } from "./nearestSurface.ts";
import { isStraight } from "./poseWords.ts";
import { safeAngle, safeLength, safePercent } from "./safeSide.ts";

/** What stops a way of steering or of coming down, before it is words. */
export interface StopFacts {
  readonly stop: Stop["stop"];
  /** Nothing of the way can be gone: it is stopped where it starts. */
  readonly isNowhere: boolean;
  /** What touches rides with the wheel: it does so at every pose. */
  readonly isAlways: boolean;
  /** The side it is on; null where no side stops it. */
  readonly side: Side | null;
  /** Of a touch the pair's name, of a limit or a joint its own; "" where nothing stops it. */
  readonly name: string;
  /** The part of a touch as a sentence calls it beside its surface; else `name`. */
  readonly part: string;
  /** What the part touches; null where nothing does. */
  readonly surface: Surface | null;
  /** mm, of a touch: just past the end of the way. */
  readonly gap: number | null;
}

/** How far one way can be steered at a height, as it is told: never more than is proven. */
export interface SteerStop extends StopFacts {
  /** Whole percent of full lock. */
  readonly percent: number;
  /** Of the wheel that meets it (else the inner one), rad; null where that pose cannot be solved. */
  readonly angle: number | null;
}

/** How low the truck comes at a steering angle, as it is told: never lower than is proven. */
export interface LowStop extends StopFacts {
  /** mm, on the steps of the format. */
  readonly travel: number;
  /** mm. Where the way starts. */
  readonly from: number;
}

/** A hair inside a border, so that it can still be solved. */
const INSIDE = 1 - 1e-9;

/** One way of steering. @param travel mm */
export function steerStop(end: Stop, travel: number, model: Model): SteerStop {
  const pose = solvePose(model.frontEnd, travel, end.at * INSIDE);
  const inner = end.at > 0 ? "left" : "right";
  const wheel = "side" in end ? end.side : inner;
  return {
    ...stopFacts(end, isStraight(end.at), pose.ok ? pose : null, model),
    percent: safePercent(end.at),
    angle: pose.ok ? safeAngle(Math.abs(pose[wheel].steerAngle), "down") : null,
  };
}

/** The way down at a steering angle. */
export function lowStop(
  { from, either }: WayDown,
  steer: number,
  model: Model,
  format: LengthFormat,
): LowStop {
  const pose = solvePose(model.frontEnd, either.at, steer);
  return {
    ...stopFacts(either, either.at <= from, pose.ok ? pose : null, model),
    travel: safeLength(either.at, "down", format),
    from,
  };
}

/** Every kind of stop, told once. @param isAtStart the way ends where it starts @param pose there; null = not solved */
export function stopFacts(
  end: Stop,
  isAtStart: boolean,
  pose: Parameters<typeof nearestSurface>[1] | null,
  model: Model,
): StopFacts {
  const nothing = {
    isNowhere: false,
    isAlways: false,
    side: null,
    name: "",
    part: "",
    surface: null,
    gap: null,
  };
  switch (end.stop) {
    case "end":
      return { ...nothing, stop: end.stop };
    case "unproven":
      return { ...nothing, stop: end.stop, isNowhere: isAtStart };
    case "limit": {
      const { stop, side, name } = end;
      return { ...nothing, stop, side, name, part: name, isNowhere: isAtStart };
    }
    case "reach": {
      const { stop, side, joint } = end;
      return { ...nothing, stop, side, name: joint, part: joint, isNowhere: isAtStart };
    }
    case "touch": {
      const { stop, side, part: name, gap, together = false } = end;
      const surface = pose === null ? "tire" : nearestSurface(model, pose, side, name);
      const part = partWords(model, side, name);
      return { stop, side, name, part, surface, gap, isNowhere: isAtStart || together, isAlways: together };
    }
  }
}

/** Steers nearer to each other than this, of full lock, are the same: mirrored sides differ by rounding alone. */
const SAME_STEER = 1e-4;

/**
 * What stops the steering first on the way from straight ahead to either lock; of two alike a touch, then the left
 * wheel's. Where nothing does, the end of the steering.
 */
export function firstStop(steering: SteerLimits): Stop {
  return waysOf(steering).reduce((first, next) => {
    const nearer = Math.abs(first.at) - Math.abs(next.at);
    if (Math.abs(nearer) > SAME_STEER) return nearer > 0 ? next : first;
    return first.stop !== "touch" && next.stop === "touch" ? next : first;
  });
}

/** The touch met first, whatever ends the other ways; null where none is known. */
export function firstTouch(steering: SteerLimits): Stop | null {
  return waysOf(steering)
    .filter(({ stop }) => stop === "touch")
    .reduce<Stop | null>(
      (first, next) => (first === null || Math.abs(next.at) < Math.abs(first.at) ? next : first),
      null,
    );
}

function waysOf({ leftTurn, rightTurn }: SteerLimits): Stop[] {
  return [leftTurn.touch.left, rightTurn.touch.left, leftTurn.touch.right, rightTurn.touch.right];
}
