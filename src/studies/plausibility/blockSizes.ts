import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { inches, ofPlace, outOf } from "./ranges.ts";
import { isUsual, type Unusual, type UsualRange } from "./unusual.ts";

/** What a part that is built is made in. Common practice, no source. */
const PIN_DIAMETER = inches(0.5, 3.5);
const ROUND_DIAMETER = inches(0.375, 4);
const WALL = inches(0.049, 0.6);
const PLATE = inches(0.1, 2);
const WELD_LEG = inches(0.08, 0.75);
const STUD_DIAMETER = inches(0.4, 1.2);
const STUD_REACH = inches(0.25, 2.5);
const ROD_END_REACH = inches(0.5, 4);

/** Share of its diameter that a tube's wall takes at most: what is thicker is sold as bored bar. Common practice, no source. */
const WALL_SHARE = 0.35;

/** What orders and jigs have. Common practice, no source. */
const ON_ORDER: readonly (readonly [KeyPath, UsualRange])[] = [
  [["order", "drop"], inches(-1, 8)],
  [["order", "hubFace"], inches(3, 10)],
  [["order", "brake", "rotorDiameter"], inches(8, 18)],
  [["order", "brake", "rotorThickness"], inches(0.25, 2)],
  [["order", "hub", "innerBearing", "bore"], inches(0.7, 3)],
  [["order", "hub", "outerBearing", "bore"], inches(0.5, 2.5)],
  [["jig", "halfLength"], inches(2, 30)],
];

/** Sizes of an order, its brake and hub, and of the jig, out of the usual. */
export function unusualOrder(setup: Setup): readonly Unusual[] {
  return ON_ORDER.flatMap(([path, range]) => ofPlace("buildSize", path, range, setup));
}

/** A knuckle's members, pin, plates, welds and studs, each out of what such things are made in. */
export function unusualBuild(setup: Setup): readonly Unusual[] {
  const { build } = setup;
  if (build === null) return [];
  const each = (list: string, i: number, key: string, value: number, range: UsualRange) =>
    outOf("buildSize", ["build", list, i, key], value, range, setup);
  return [
    ...(build.pin?.steps ?? []).flatMap(({ diameter }, i) =>
      outOf("buildSize", ["build", "pin", "steps", i, "diameter"], diameter, PIN_DIAMETER, setup),
    ),
    ...build.members.flatMap((member, i) =>
      member.kind === "link"
        ? []
        : [
            ...each("members", i, "diameter", member.diameter, ROUND_DIAMETER),
            ...(member.kind === "tube" ? unusualWall(member, ["build", "members", i], setup) : []),
          ],
    ),
    ...build.plates.flatMap(({ thickness }, i) => each("plates", i, "thickness", thickness, PLATE)),
    ...build.welds.flatMap(({ leg }, i) => each("welds", i, "leg", leg, WELD_LEG)),
    ...build.studs.flatMap(({ diameter, reach }, i) => [
      ...each("studs", i, "diameter", diameter, STUD_DIAMETER),
      ...each("studs", i, "reach", reach, STUD_REACH),
    ]),
    ...build.rodEnds.flatMap(({ reach }, i) => each("rodEnds", i, "reach", reach, ROD_END_REACH)),
  ];
}

function unusualWall(
  { wall, diameter }: { readonly wall: number; readonly diameter: number },
  path: KeyPath,
  setup: Setup,
): readonly Unusual[] {
  if (!isUsual(diameter, ROUND_DIAMETER)) return [];
  const range = { least: WALL.least, most: Math.min(WALL.most!, WALL_SHARE * diameter) };
  return outOf("buildSize", [...path, "wall"], wall, range, setup);
}

/** Multiples of the corner's weight that load cases are commonly made of. Common practice, no source. */
const MULTIPLE: UsualRange = { least: -8, most: 8 };

/** Load cases in multiples that nobody uses: a force typed as a multiple, or a decimal place off. */
export function unusualMultiples(setup: Setup): readonly Unusual[] {
  return (setup.loads?.cases ?? []).flatMap((one, i) =>
    one.kind === "multiples"
      ? (["forward", "outboard", "up"] as const).flatMap((way) =>
          outOf("loadMultiple", ["loads", "cases", i, way], one[way], MULTIPLE, setup),
        )
      : [],
  );
}
