import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { SPRING_OR_SHOCK_NAMES } from "../../setup/blocks/hardwareNames.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { FrontEnd } from "../../suspension/frontEnd.ts";
import type { SpringOrShockPair } from "./pairs.ts";
import {
  type SpringOrShock,
  springOrShockOnArm,
  springOrShockOnKnuckle,
  springOrShockShape,
} from "./springOrShock.ts";

/**
 * Air spring and shock against the ring, as far as the setup gives their diameters; left side first. Each is taken as
 * round about the line between its mounts, its ends rounded beyond them by half the diameter: on the safe side of a
 * bag or can that ends flat.
 */
export function springOrShockPairs(setup: Setup, frontEnd: FrontEnd, ring: RingShape): SpringOrShockPair[] {
  const { airSpring, limits } = setup;
  const shock = limits?.shock ?? null;
  return (["left", "right"] as const).flatMap((side) => {
    const { row } = frontEnd[side];
    const pairs: SpringOrShockPair[] = [];
    const add = (name: string, springOrShock: SpringOrShock, diameter: number) =>
      pairs.push({
        kind: "springOrShock",
        name,
        partName: name,
        solid: "ring",
        side,
        ring,
        springOrShock,
        part: springOrShockShape(name, springOrShock, 0.5 * diameter),
      });
    if (airSpring !== null && airSpring.diameter !== null)
      add(
        SPRING_OR_SHOCK_NAMES.airSpring,
        springOrShockOnArm(row, airSpring.bodyMount, airSpring.armMount),
        airSpring.diameter,
      );
    if (shock !== null && shock.diameter !== null)
      add(
        SPRING_OR_SHOCK_NAMES.shock,
        shock.on === "knuckle"
          ? springOrShockOnKnuckle(shock.bodyMount, shock.lowerMount)
          : springOrShockOnArm(row, shock.bodyMount, shock.lowerMount),
        shock.diameter,
      );
    return pairs;
  });
}
