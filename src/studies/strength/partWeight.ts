import { addScaled, length, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup, PlateSetup } from "../../setup/types/buildTypes.ts";
import { jointPlaces, pointOnPin } from "../../setup/types/jointPlaces.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { STEEL_DENSITY } from "./material.ts";

/** One thing that weighs: kg, and its center of mass, knuckle frame, mm. */
export interface WeighedPart {
  readonly name: string;
  readonly kind: "member" | "plate" | "pin";
  readonly mass: number;
  readonly center: Vec3;
}

/** A knuckle by what it is made of. */
export interface PartWeight {
  readonly parts: readonly WeighedPart[];
  readonly mass: number;
  /** Knuckle frame, mm; null = nothing weighs. */
  readonly center: Vec3 | null;
}

/**
 * Weight of a build: members by their lengths between joints, plates by area and thickness, the pin by its steps, all as steel of
 * 0.2836 lb/in³. Notches, overlaps where members meet, weld metal, joints and bolts are left out.
 */
export function partWeight(build: BuildSetup, knuckle: KnuckleSetup): PartWeight {
  const places = jointPlaces(build, knuckle);
  const parts: WeighedPart[] = [];
  for (const member of build.members) {
    if (member.kind === "link") continue;
    const [from, to] = [places.get(member.from)!, places.get(member.to)!];
    const inner = member.kind === "tube" ? member.diameter - 2 * member.wall : 0;
    const volume = (Math.PI / 4) * (member.diameter ** 2 - inner ** 2) * length(sub(to, from));
    const center = scale(addScaled(from, to, 1), 0.5);
    parts.push({ name: member.name, kind: "member", mass: volume * STEEL_DENSITY, center });
  }
  for (const plate of build.plates) {
    const { area, center } = plateArea(plate);
    parts.push({ name: plate.name, kind: "plate", mass: area * plate.thickness * STEEL_DENSITY, center });
  }
  build.pin?.steps.forEach(({ from, to, diameter }, i) => {
    const mass = (Math.PI / 4) * diameter ** 2 * (to - from) * STEEL_DENSITY;
    const center = pointOnPin(knuckle, (from + to) / 2);
    parts.push({ name: `pin, step ${i + 1}`, kind: "pin", mass, center });
  });
  const mass = parts.reduce((sum, part) => sum + part.mass, 0);
  const moment = parts.reduce<Vec3>((sum, part) => addScaled(sum, part.center, part.mass), [0, 0, 0]);
  return { parts, mass, center: mass > 0 ? scale(moment, 1 / mass) : null };
}

/** Area, mm², and its middle, knuckle frame, of a plate without its holes: the shoelace formula. */
function plateArea({ at, across, up, outline, holes }: PlateSetup): {
  readonly area: number;
  readonly center: Vec3;
} {
  let [area, u, v] = [0, 0, 0];
  outline.forEach(([u0, v0], i) => {
    const [u1, v1] = outline[(i + 1) % outline.length]!;
    const turn = (u0 * v1 - u1 * v0) / 2;
    area += turn;
    u += (turn * (u0 + u1)) / 3;
    v += (turn * (v0 + v1)) / 3;
  });
  const sign = Math.sign(area);
  [area, u, v] = [sign * area, sign * u, sign * v];
  for (const hole of holes) {
    const gone = (Math.PI / 4) * hole.diameter ** 2;
    area -= gone;
    u -= gone * hole.at[0];
    v -= gone * hole.at[1];
  }
  return { area, center: addScaled(addScaled(at, across, u / area), up, v / area) };
}
