import type { BuildSetup } from "../../../src/setup/types/buildTypes.ts";
import type { KnuckleSetup } from "../../../src/setup/types/types.ts";

/** An invented knuckle, mm. */
export const KNUCKLE: KnuckleSetup = {
  span: 266.7,
  pinHeight: 142.2,
  pinLead: 0,
  pinAngle: (8.4 * Math.PI) / 180,
  hubFace: 155.6,
  steeringArm: [-148.6, -25.4, 33],
};

/** A build with all there can be: a pin of three steps, tubes, a bar, a plate with holes. mm, knuckle frame. */
export const BUILD: BuildSetup = {
  material: "4130 normalized tube",
  materials: [],
  pin: {
    material: null,
    steps: [
      { from: -30, to: 60, diameter: 50.8, fillet: null },
      { from: 60, to: 110, diameter: 38.1, fillet: 3 },
      { from: 110, to: 175, diameter: 25.4, fillet: 2 },
    ],
    bearings: null,
    forHubFace: null,
  },
  joints: [
    { name: "low", at: [0, 0, 25] },
    { name: "high", at: [0, 0, 240] },
    { name: "middle", at: [0, 0, 142.2] },
    { name: "armRoot", at: [0, 0, 60] },
  ],
  members: [
    {
      kind: "tube",
      name: "lower post",
      from: "middle",
      to: "low",
      diameter: 44.45,
      wall: 6.35,
      material: null,
    },
    {
      kind: "tube",
      name: "upper post",
      from: "middle",
      to: "high",
      diameter: 44.45,
      wall: 6.35,
      material: null,
    },
    { kind: "bar", name: "brace", from: "armRoot", to: "tieRodOuter", diameter: 25.4, material: null },
    { kind: "link", name: "boss", from: "high", to: "upperBallJoint" },
  ],
  plates: [
    {
      name: "caliper bracket",
      thickness: 9.525,
      material: null,
      at: [-40, 30, 150],
      across: [-1, 0, 0],
      up: [0, 0, 1],
      outline: [
        [0, -40],
        [70, -30],
        [70, 30],
        [0, 40],
      ],
      holes: [
        { at: [55, -18], diameter: 12.7 },
        { at: [55, 18], diameter: 12.7 },
      ],
    },
  ],
  welds: [],
  studs: [],
  rodEnds: [],
  caliperAt: null,
};
