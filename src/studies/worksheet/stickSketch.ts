import { arrowLine, type Sketch, words } from "../../geometry/sketch.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import { SHAPE } from "./sketchTruck.ts";
import { backdrop, placeIn, SKETCH_SIZE } from "./sketchViews.ts";

/** mm. Where the stick lies on the sketch truck. */
const STICK = { height: 455, ahead: 560 } as const;

/** The lip from the left with the stick along it: a tape up to each station. @param edge what the stick is called */
export function stickSketch(edge: string): Sketch {
  const on = ([x, y]: readonly [number, number]): Vec3 => [x, 0, y];
  const place = (x: number, z: number) => placeIn("side", on([x, z]));
  const ends = [place(STICK.ahead, STICK.height), place(-STICK.ahead, STICK.height)] as const;
  return {
    ...SKETCH_SIZE,
    shapes: [
      ...backdrop("side"),
      { kind: "line", look: "edge", points: ends },
      ...SHAPE.lip.flatMap(([x, , z]) => {
        const [from, to] = [place(x, STICK.height), place(x, z)];
        return Math.abs(to[1] - from[1]) < 8
          ? [{ kind: "ring", look: "tape", at: to, radius: 4.5 } as const]
          : [...arrowLine("tape", from, to), { kind: "ring", look: "tape", at: to, radius: 4.5 } as const];
      }),
      words(edge, [ends[1][0], ends[1][1] + 16], "end", true),
    ],
  };
}
