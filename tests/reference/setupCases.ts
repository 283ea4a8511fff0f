import fc from "fast-check";
import { addScaled, type Vec3 } from "../../src/geometry/vec.ts";
import { DEFAULT_JIG, DEFAULT_JIG_TOLERANCES } from "../../src/setup/types/defaults.ts";
import type { BodyPart, PartSide } from "../../src/setup/types/truckTypes.ts";
import type { Setup } from "../../src/setup/types/types.ts";
import { type Model, modelOf } from "../../src/studies/model/model.ts";
import type { SteeringInput } from "../../src/suspension/inputs.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { type GeneratedTruck, plausibleTrucks } from "../suspension/plausibleTrucks.ts";
import { flatMesh } from "./flatMesh.ts";
import { between, offsets } from "./gapCases.ts";
import { aboutAxis } from "./referenceRing.ts";
import { ringCases } from "./rings.ts";

const NO_ODDS: Setup["odds"] = {
  points: 0,
  tire: { sectionWidth: null, diameter: null },
  knuckle: { span: null, pinHeight: null, pinLead: null, pinAngle: null, hubFace: null, steeringArm: null },
};

/** A setup as the reader would give it, around a generated front end. */
function setupOf(
  { input }: GeneratedTruck,
  profiled: boolean,
  body: readonly BodyPart[],
  travel: Setup["travel"],
): Setup {
  const tire = profiled
    ? { kind: "profile" as const, profile: ringCases[1]!.profile }
    : { kind: "dimensions" as const, diameter: 711, sectionWidth: 240, treadWidth: null };
  return {
    name: "generated",
    units: "mm",
    variant: null,
    variantNames: [],
    truck: {
      wheelbase: null,
      upperArm: input.upperArm,
      lowerArm: input.lowerArm,
      steering: input.steering,
      body,
    },
    knuckle: input.knuckle,
    build: null,
    wheel: {
      rimDiameter: 381,
      rimWidth: 203.2,
      offset: input.wheelOffset,
      barrelDiameter: 343,
      center: null,
    },
    tire: { ...tire, loadedRadius: 335 },
    alignment: { toe: input.toe, targets: null },
    adjusters: null,
    limits: null,
    airSpring: null,
    masses: null,
    loads: null,
    travel,
    hardware: null,
    stances: [],
    measuredStances: [],
    poses: [],
    roll: null,
    floor: null,
    order: null,
    confirmed: [],
    odds: NO_ODDS,
    within: [],
    allowance: 6,
    jig: { ...DEFAULT_JIG, tolerances: DEFAULT_JIG_TOLERANCES },
    asBuilt: null,
    readings: [],
    readingsLeftOut: [],
    fromExample: null,
  };
}

/** A part about a place where the tire passes: small enough that its gap changes over the range. */
function bodyPart(name: string, place: Vec3): fc.Arbitrary<BodyPart> {
  const side = fc.constantFrom<PartSide>("both", "both", "left", "right");
  const near = (size: number) => offsets(size).map((o) => addScaled(place, o, 1));
  return fc.oneof(
    fc.record({
      name: fc.constant(name),
      side,
      kind: fc.constant("path" as const),
      radius: between(0, 12),
      points: fc.array(near(90), { minLength: 1, maxLength: 5 }),
    }),
    fc.tuple(side, between(2, 45), between(2, 45), between(2, 45)).map(([s, a, b, c]): BodyPart => {
      const [x, y, z] = place;
      return { name, side: s, kind: "box", min: [x - a, y - b, z - c], max: [x + a, y + b, z + c] };
    }),
    fc.tuple(side, fc.array(near(80), { minLength: 4, maxLength: 4 })).map(([s, vertices]): BodyPart => {
      const triangles = [
        [0, 1, 2],
        [1, 2, 3],
      ] as const;
      return { name, side: s, kind: "mesh", ...flatMesh(vertices, triangles) };
    }),
  );
}

/** Assembled setups of plausible trucks with two parts near where the left tire goes. @param kind of steering. */
export function setupCases(kind: SteeringInput["type"]): fc.Arbitrary<Model> {
  const places = fc.record({
    travel: between(-60, 60),
    steer: between(-1, 1),
    turn: between(0, 2 * Math.PI),
    // Over the tread, beside either wall, now and then anywhere about it, deep inside included.
    at: fc.oneof(
      { weight: 3, arbitrary: fc.tuple(between(-140, 140), between(370, 470)) },
      { weight: 3, arbitrary: fc.tuple(between(135, 230), between(120, 380)) },
      { weight: 3, arbitrary: fc.tuple(between(-230, -135), between(120, 380)) },
      { weight: 1, arbitrary: fc.tuple(between(-250, 250), between(0, 450)) },
    ),
  });
  return fc
    .tuple(plausibleTrucks(kind), fc.boolean(), between(-90, 0), between(0, 90), places, places)
    .chain(([truck, profiled, droop, bump, one, other]) => {
      const placed = [one, other].map(({ travel, steer, turn, at }) => {
        const pose = solvePose(truck.frontEnd, travel, steer);
        const wheel = pose.ok ? pose.left : solveRest(truck);
        return aboutAxis({ center: wheel.wheelCenter, axis: wheel.wheelAxis }, at[0], at[1], turn);
      });
      return fc
        .tuple(bodyPart("one", placed[0]!), bodyPart("other", placed[1]!))
        .map((body) => setupOf(truck, profiled, body, { droop, bump }));
    })
    .map((setup) => ({ setup, made: modelOf(setup, "generated") }))
    .filter(({ made }) => made.ok)
    .map(({ setup, made }) => {
      if (!made.ok) throw new TypeError("filtered above");
      return { ...made.value, [fc.toStringMethod]: () => JSON.stringify(setup) };
    });
}

function solveRest(truck: GeneratedTruck) {
  const rest = solvePose(truck.frontEnd, 0, 0);
  if (!rest.ok) throw new TypeError("an assembled truck stands at rest");
  return rest.left;
}

/** Makes a claim about every truck checked; a failure says which one, as JSON. */
export function onEachOf<Report>(
  checked: readonly { readonly model: Model; readonly report: Report }[],
  claim: (model: Model, report: Report) => void,
): void {
  for (const { model, report } of checked) {
    try {
      claim(model, report);
    } catch (cause) {
      throw new TypeError(`setup: ${JSON.stringify(model.setup)}`, { cause });
    }
  }
}
