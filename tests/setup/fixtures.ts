/** An invented truck in inches, as a builder types it; every block present. A fresh copy each call. */
export function exampleDocument() {
  return {
    format: "wellsweep-setup",
    version: 1,
    name: "Invented half-ton",
    units: "in",
    truck: {
      wheelbase: 118,
      upperArm: {
        frontPivot: [4.5, 15.75, 18],
        rearPivot: [-6, "15 1/2", 17.5],
        ballJoint: [-0.5, 24.75, "19 3/8"],
      },
      lowerArm: { frontPivot: [8, 10, 9.25], rearPivot: [-8, 9.75, 9.5], ballJoint: [0.25, 26.25, "8 1/4"] },
      steering: { type: "rack", innerEnd: [-6, 11.25, "10 1/8"], stroke: "2 7/8" },
      body: [
        {
          name: "fender lip",
          kind: "path",
          radius: "1/8",
          points: [
            [17, 32.5, 16],
            [0, 33, 31.5],
            [-17, 32.5, 16],
          ],
        },
        { name: "frame rail", kind: "box", min: [-32, 12.5, 16], max: [32, 15.5, 22.5], side: "left" },
        {
          name: "inner fender",
          kind: "mesh",
          vertices: [
            [12, 20, 30],
            [-12, 20, 30],
            [0, 20, "33 1/2"],
          ],
          triangles: [[0, 1, 2]],
          side: "right",
        },
      ] as unknown[],
    },
    knuckle: {
      span: "10 3/4",
      pinHeight: 5.25,
      pinAngle: "8° 15'",
      pinLead: "1/16",
      hubFace: '5-7/8"',
      steeringArm: [-6.125, -0.75, 1.5],
    },
    wheel: { rimDiameter: 15, rimWidth: 7, backspacing: "3 3/4", barrelDiameter: 13.5 },
    tire: { size: "P225/70R15", loadedRadius: "335 mm" },
    alignment: { toe: 0.125 },
    travel: { droop: -3.5, bump: "3 1/4" },
    stances: [
      { name: "parked", travel: 3 },
      { name: "on the road", travel: 0 },
    ],
    allowance: "3/8",
    variants: [
      { name: "narrow", patch: { knuckle: { hubFace: "5 3/8" } } },
      { name: "wide wheel", patch: { wheel: { rimWidth: 8, backspacing: null, offset: "-6 mm" } } },
    ] as { name: string; patch: Record<string, unknown> }[],
  };
}

/** The least a setup may hold. */
export function barestDocument() {
  const { format, version, truck, knuckle } = exampleDocument();
  const { upperArm, lowerArm, steering } = truck;
  const { span, pinHeight, pinAngle, hubFace, steeringArm } = knuckle;
  return {
    format,
    version,
    units: "in",
    truck: { upperArm, lowerArm, steering },
    knuckle: { span, pinHeight, pinAngle, hubFace, steeringArm },
    wheel: { rimDiameter: 15, rimWidth: 7, offset: 0 },
    tire: { diameter: 28, sectionWidth: 9 },
    travel: { droop: 0, bump: 0 },
  };
}

/** The steering block of an invented truck with a pitman arm, inches. */
export function pitmanSteering() {
  return {
    type: "pitman",
    innerEnd: [-5, 9, 10.5],
    swing: 36,
    pitman: { pivot: [-9, 13, 11], end: [-4, 13, 10.75] },
    idler: { pivot: [-9, -13, 11], axis: [0, 0.2, 2], end: [-4, -13, 10.75] },
  };
}
