import * as z from "zod";
import { block, list, oneOfBlocks } from "../fields/blockFields.ts";
import { choiceField, lengthField, pointField, quantityField, textField } from "../fields/fields.ts";
import type { BlockReading, LengthAsTyped } from "../reading/blockReading.ts";
import { MAX_MEMBERS } from "../reading/limits.ts";
import type { BuildSetup, Member } from "../types/buildTypes.ts";
import { DEFAULT_MATERIAL } from "../types/defaults.ts";
import { jointPlaces } from "../types/jointPlaces.ts";
import type { KnuckleSetup } from "../types/types.ts";
import { refuseWrongJoints } from "./buildJoints.ts";
import { pinField, resolvePin } from "./buildPin.ts";
import { carriedBy, onField } from "./buildPlaces.ts";
import { platesField, resolvePlates } from "./buildPlates.ts";
import { resolveRodEnds, resolveStuds, rodEndsField, studsField } from "./buildStuds.ts";
import { refuseRepeatedNames } from "./variants.ts";

/** What size a round tube is, as a member of a build and in a catalog. */
export const tubeSizeShape = {
  diameter: lengthField("outside diameter", "positive"),
  wall: lengthField("wall thickness", "positive"),
};

export type TubeSizeAsTyped = Readonly<Record<keyof typeof tubeSizeShape, LengthAsTyped>>;

/** mm; a wall that leaves no bore is an issue. */
export function resolveTubeSize(
  typed: TubeSizeAsTyped,
  reading: BlockReading,
): { readonly diameter: number; readonly wall: number } {
  const diameter = reading.length(typed.diameter, "diameter");
  const wall = reading.length(typed.wall, "wall");
  if (!(wall < diameter / 2))
    reading.issue(["wall"], typed.wall, "must be less than half the diameter; a solid one is of kind bar");
  return { diameter, wall };
}

const materialField = (byDefault: string) =>
  textField(`name of its material, of build.materials or of the catalog; default ${byDefault}`).optional();

const ends = {
  name: textField("name of the member, unique among members"),
  from: textField("name of the joint it starts at"),
  to: textField("name of the joint it ends at"),
};

const memberField = oneOfBlocks(
  "a member of the knuckle, straight from joint to joint",
  "kind",
  ["tube", "bar", "link"],
  [
    block("a round tube", {
      kind: z.literal("tube").meta({ description: "round tube" }),
      ...ends,
      ...tubeSizeShape,
      material: materialField("the build's material"),
    }),
    block("a solid round bar", {
      kind: z.literal("bar").meta({ description: "solid round bar" }),
      ...ends,
      diameter: lengthField("diameter", "positive"),
      material: materialField("the build's material"),
    }),
    block("a stiff connection such as a plate or a socket, without weight of its own", {
      kind: z.literal("link").meta({ description: "stiff connection" }),
      ...ends,
    }),
  ],
);

/** What the knuckle is made of, as typed, in the knuckle frame. */
export const buildField = block(
  "what the knuckle is made of, in the knuckle frame: origin at the lower ball joint center, z up the steering axis, y outboard, x forward",
  {
    material: textField(`material of what names none; default ${DEFAULT_MATERIAL}`).optional(),
    materials: list(
      "materials of this setup's own, besides the catalog's; default none",
      block("a material by its published strength", {
        name: textField("name of the material, unique in the list"),
        yield: quantityField("yield strength", "stress"),
        ultimate: quantityField("ultimate tensile strength", "stress"),
        source: textField("where the values are published; left out: not given").optional(),
      }),
    ).optional(),
    pin: pinField.optional(),
    joints: list(
      "joints besides lowerBallJoint, upperBallJoint, tieRodOuter, pinRoot (inner end of the pin's steps) and hubFace; default none",
      block("a joint", {
        name: textField("name of the joint, unique in the block"),
        at: pointField("where it is, knuckle frame: x forward, y outboard, z up the steering axis"),
        on: onField,
      }),
      { most: MAX_MEMBERS },
    ).optional(),
    members: list("tubes, bars and stiff connections; default none", memberField, {
      most: MAX_MEMBERS,
    }).optional(),
    plates: platesField.optional(),
    welds: list(
      "fillet welds all round the ends of members; default none",
      block("a fillet weld all round an end of a member", {
        member: textField("name of the tube or bar"),
        end: choiceField("which end of it", ["from", "to"]),
        leg: lengthField("leg of the fillet", "positive"),
      }),
      { most: 2 * MAX_MEMBERS },
    ).optional(),
    studs: studsField.optional(),
    rodEnds: rodEndsField.optional(),
    caliperAt: textField(
      "joint where the caliper holds the knuckle; left out: braking torque goes in at the pin's root",
    ).optional(),
  },
);

export type BuildAsTyped = z.infer<typeof buildField>;

/** The block in mm and MPa, defaults filled in; null = the setup has none. @param knuckle null = it is wrong already */
export function resolveBuild(
  typed: BuildAsTyped | undefined,
  reading: BlockReading,
  knuckle: KnuckleSetup | null,
): BuildSetup | null {
  if (typed === undefined) return null;
  const { materials = [], joints = [], members = [], plates = [], welds = [] } = typed;
  for (const key of ["materials", "joints", "members", "plates"] as const)
    refuseRepeatedNames(typed[key] ?? [], reading.inside(key));
  const build: BuildSetup = {
    material: typed.material ?? DEFAULT_MATERIAL,
    materials: materials.map((own, i) => {
      const strength = (key: "yield" | "ultimate") => reading.quantity(own[key], "stress");
      if (!(strength("ultimate") >= strength("yield")))
        reading.issue(["materials", i, "ultimate"], own.ultimate, "must not be less than yield");
      return {
        name: own.name,
        yield: strength("yield"),
        ultimate: strength("ultimate"),
        source: own.source ?? null,
      };
    }),
    pin:
      typed.pin === undefined ? null : resolvePin(typed.pin, reading.inside("pin"), knuckle?.hubFace ?? null),
    joints: joints.map(({ name, at, on }, i) => ({
      name,
      at: carriedBy(on, knuckle).place(reading.point(at, "joints", i, "at")),
    })),
    members: members.map((member, i) => resolveMember(member, reading.inside("members", i))),
    plates: resolvePlates(plates, reading.inside("plates"), knuckle),
    welds: welds.map(({ member, end, leg }, i) => ({
      member,
      end,
      leg: reading.length(leg, "welds", i, "leg"),
    })),
    studs: resolveStuds(typed.studs ?? [], reading.inside("studs")),
    rodEnds: resolveRodEnds(typed.rodEnds ?? [], reading.inside("rodEnds")),
    caliperAt: typed.caliperAt ?? null,
  };
  refuseWrongJoints(build, knuckle === null ? null : jointPlaces(build, knuckle), reading);
  return build;
}

function resolveMember(typed: z.infer<typeof memberField>, reading: BlockReading): Member {
  const { name, from, to } = typed;
  if (typed.kind === "link") return { kind: "link", name, from, to };
  const material = typed.material ?? null;
  if (typed.kind === "tube")
    return { kind: "tube", name, from, to, ...resolveTubeSize(typed, reading), material };
  return { kind: "bar", name, from, to, diameter: reading.length(typed.diameter, "diameter"), material };
}
