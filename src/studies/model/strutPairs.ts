import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { STRUT_NAMES } from "../../setup/blocks/hardwareNames.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { FrontEnd } from "../../suspension/frontEnd.ts";
import type { StrutPair } from "./pairs.ts";
import { type Strut, strutOnKnuckle, strutOnLowerArm, strutShape } from "./strut.ts";

/**
 * Air spring and shock against the ring, as far as the setup gives their diameters; left side first. Each is taken as
 * round about the line between its mounts, its ends rounded beyond them by half the diameter: on the safe side of a
 * bag or can that ends flat.
 */
export function strutPairs(setup: Setup, frontEnd: FrontEnd, ring: RingShape): StrutPair[] {
  const { airSpring, limits } = setup;
  const shock = limits?.shock ?? null;
  return (["left", "right"] as const).flatMap((side) => {
    const { row } = frontEnd[side];
    const pairs: StrutPair[] = [];
    const add = (name: string, strut: Strut, diameter: number) =>
      pairs.push({
        kind: "strut",
        name,
        partName: name,
        solid: "ring",
        side,
        ring,
        strut,
        part: strutShape(name, strut, 0.5 * diameter),
      });
    if (airSpring !== null && airSpring.diameter !== null)
      add(
        STRUT_NAMES.airSpring,
        strutOnLowerArm(row, airSpring.bodyMount, airSpring.armMount),
        airSpring.diameter,
      );
    if (shock !== null && shock.diameter !== null)
      add(
        STRUT_NAMES.shock,
        shock.on === "knuckle"
          ? strutOnKnuckle(shock.bodyMount, shock.lowerMount)
          : strutOnLowerArm(row, shock.bodyMount, shock.lowerMount),
        shock.diameter,
      );
    return pairs;
  });
}
