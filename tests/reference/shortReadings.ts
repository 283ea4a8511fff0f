/** The lip's point over the axle, as the short list names it. */
export const LIP = 'body["fender lip"].points[3]';

/** The short list as it could be read, in inches. */
export const TWELVE: readonly { readonly [key: string]: unknown }[] = [
  { size: "tire.diameter", is: "27 7/8" },
  { size: "wheel.backspacing", is: "4 1/4" },
  { height: "wheelCenter", is: "13 1/4" },
  { size: "track", is: "65 1/2" },
  { height: LIP, is: "30 1/4" },
  { offset: LIP, is: "36 1/8" },
  { height: "lowerArm.ballJoint", is: "8 1/2" },
  { between: ["lowerArm.ballJoint", "lowerArm.ballJoint"], side: "across", is: "52 3/4" },
  { height: "lowerArm.frontPivot", is: "9 3/8" },
  { between: ["lowerArm.ballJoint", "upperArm.ballJoint"], is: "10 3/8" },
  { height: "upperArm.frontPivot", is: "17 3/4" },
  { between: ["upperArm.frontPivot", "upperArm.ballJoint"], is: "10 1/8" },
];
