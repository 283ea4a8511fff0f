/** A small setup of our own, as a file would hold it. */
export const exampleDocument = {
  format: "wellsweep-setup",
  version: 1,
  name: "Test truck",
  units: "in",
  truck: {
    upperArm: { frontPivot: [5, 16.2, 17.6], rearPivot: [-6.5, 16, 17.2], ballJoint: [-0.35, 25.1, 19] },
    lowerArm: { frontPivot: [7.5, 10.5, 9.6], rearPivot: [-7.5, 10.2, 9.9], ballJoint: [0.35, 26.6, 8.6] },
    steering: { type: "rack", innerEnd: [-6.2, 11.6, 10.3], stroke: 2.75 },
    body: [
      {
        name: "lip",
        kind: "path",
        radius: 0.1,
        points: [
          [14, 34, 24],
          [0, 34, 30],
          [-14, 34, 24],
        ],
      },
      { name: "rail", kind: "box", min: [-30, 12, 16], max: [30, 15, 22] },
    ],
  },
  knuckle: { span: 10.52, pinHeight: 5.6, pinAngle: 8.4, hubFace: "6 1/8", steeringArm: [-5.85, -1, 1.3] },
  wheel: { rimDiameter: 15, rimWidth: 8, backspacing: 4.5 },
  tire: { size: "P235/70R15" },
  travel: { droop: -4, bump: 3.5 },
  stances: [
    { name: "aired out", travel: 3.25 },
    { name: "driving", travel: 0 },
  ],
  allowance: 0.25,
  variants: [{ name: "narrow", patch: { knuckle: { hubFace: "5 5/8" } } }],
};

export const exampleText = JSON.stringify(exampleDocument);
