import { WORK_LABELS } from "./workLabels.ts";

/**
 * What fields are called on a form, by key; `parent.key` where a key means different things in different blocks. Words of
 * the trade; a key that is not here is taken apart into its words.
 */
const LABELS: Readonly<Record<string, string>> = {
  name: "Name",
  units: "Units of the file",
  allowance: "Gap to keep",
  // Truck
  "upperArm.frontPivot": "Upper arm, front pivot",
  "upperArm.rearPivot": "Upper arm, rear pivot",
  "upperArm.ballJoint": "Upper ball joint",
  "lowerArm.frontPivot": "Lower arm, front pivot",
  "lowerArm.rearPivot": "Lower arm, rear pivot",
  "lowerArm.ballJoint": "Lower ball joint",
  "steering.type": "Steering linkage",
  innerEnd: "Inner tie rod end",
  innerEndRight: "Inner tie rod end, right side",
  stroke: "Rack stroke, each way",
  swing: "Pitman arm swing, each way",
  "pitman.pivot": "Pitman shaft",
  "pitman.axis": "Pitman shaft direction",
  "pitman.end": "Pitman arm end",
  "idler.pivot": "Idler shaft",
  "idler.axis": "Idler shaft direction",
  "idler.end": "Idler arm end",
  body: "Body parts",
  side: "Side of the truck",
  min: "Lowest corner",
  max: "Highest corner",
  file: "Mesh file",
  unit: "Unit of the mesh file",
  "place.from": "Three points of the mesh",
  "place.to": "Three points on the truck",
  "place.matched": "Points seen on both",
  "matched.inMesh": "In the mesh",
  "matched.onTruck": "On the truck",
  turn: "Turned by",
  move: "Moved by",
  // Knuckle, wheel, tire
  "knuckle.span": "Ball joint span",
  steeringArm: "Outer tie rod end",
  "hardware.steeringArm": "Steering arm",
  loadedRadius: "Loaded radius",
  "tire.size": "Tire size",
  "tire.diameter": "Tire diameter",
  profile: "Measured tire profile",
  // Alignment, travel, stances
  toe: "Toe, each wheel",
  "targets.stance": "Stance to align at",
  "targets.camber": "Camber wanted",
  "targets.caster": "Caster wanted",
  "targets.toe": "Toe wanted, each wheel",
  "left.camber": "Camber wanted, left wheel",
  "left.caster": "Caster wanted, left wheel",
  "left.toe": "Toe wanted, left wheel",
  "right.camber": "Camber wanted, right wheel",
  "right.caster": "Caster wanted, right wheel",
  "right.toe": "Toe wanted, right wheel",
  "adjusters.kind": "Adjusters",
  "adjusters.direction": "Direction of adjustment",
  "adjusters.front": "Front, as bolted on",
  "adjusters.rear": "Rear, as bolted on",
  "adjusters.least": "Thinnest stack",
  "adjusters.most": "Thickest stack",
  "adjusters.step": "Smallest step",
  "adjusters.arm": "Arm with eccentrics",
  "adjusters.throw": "Eccentric throw, each way",
  "adjusters.legs": "Legs are set",
  "adjusters.shorter": "Leg shorter by up to",
  "adjusters.longer": "Leg longer by up to",
  droop: "Full droop",
  bump: "Full bump",
  "stances.travel": "Height, as wheel travel",
  "stances.lowerArmAngle": "Height, as lower arm angle",
  "stances.airSpringHeight": "Height, as air spring height",
  "stances.lipHeight": "Height, floor to fender lip",
  "stances.frameHeight": "Height, floor to frame",
  "roll.most": "Body roll, each way",
  "roll.curb": "One wheel lifted, over a curb",
  "floor.rear": "Rear of the truck",
  "floor.lip": "Fender lip, where measured to the floor",
  "floor.frame": "Frame, where measured to the floor",
  "floor.points": "Points that may drag",
  "points.at": "Where it is",
  "upperArm.radius": "Upper arm radius",
  "lowerArm.radius": "Lower arm radius",
  "upperBallJoint.radius": "Upper ball joint housing radius",
  "lowerBallJoint.radius": "Lower ball joint housing radius",
  "steeringArm.radius": "Steering arm radius",
  "tieRod.radius": "Tie rod radius",
  "tieRodEnd.radius": "Tie rod end radius",
  "knuckle.radius": "Knuckle body radius",
  "rotor.diameter": "Rotor diameter",
  "rotor.thickness": "Rotor thickness",
  "rotor.inboard": "Rotor face, inboard of the hub face",
  "caliper.min": "Caliper, lowest corner",
  "caliper.max": "Caliper, highest corner",
  ...WORK_LABELS,
  // Limits, air, weights
  "upperBallJoint.cone": "Upper ball joint, cone half angle",
  "upperBallJoint.inOut": "Upper ball joint, in and out",
  "upperBallJoint.foreAft": "Upper ball joint, fore and aft",
  "upperBallJoint.stud": "Upper ball joint, stud direction",
  "upperBallJoint.housing": "Upper ball joint, housing direction",
  "lowerBallJoint.cone": "Lower ball joint, cone half angle",
  "lowerBallJoint.inOut": "Lower ball joint, in and out",
  "lowerBallJoint.foreAft": "Lower ball joint, fore and aft",
  "lowerBallJoint.stud": "Lower ball joint, stud direction",
  "lowerBallJoint.housing": "Lower ball joint, housing direction",
  "alignment.sleeveThread": "Tie rod sleeve, thread",
  "outerTieRodEnd.misalignment": "Outer tie rod end, swing",
  "outerTieRodEnd.stud": "Outer tie rod end, stud direction",
  "innerTieRodEnd.misalignment": "Inner tie rod end, swing",
  "innerTieRodEnd.stud": "Inner tie rod end, stud direction",
  "bumpStop.travel": "Bump stop, as wheel travel",
  "droopStrap.travel": "Droop strap, as wheel travel",
  "shock.bodyMount": "Shock, body mount",
  "shock.lowerMount": "Shock, lower mount",
  "shock.on": "Shock, lower mount on",
  "shock.compressed": "Shock, shortest",
  "shock.extended": "Shock, longest",
  "shock.diameter": "Shock, diameter",
  "steeringStop.angle": "Steering stop, steer angle",
  rackStroke: "Rack's own stroke, each way",
  pitmanSwing: "Steering box's own swing, each way",
  "airSpring.bodyMount": "Air spring, body mount",
  "airSpring.armMount": "Air spring, arm mount",
  "airSpring.leastHeight": "Air spring, least height",
  "airSpring.greatestHeight": "Air spring, greatest height",
  "airSpring.diameter": "Air spring, diameter",
  "airSpring.leastPressure": "Air spring, least pressure",
  "airSpring.greatestPressure": "Air spring, greatest pressure",
  "airSpring.exponent": "Gas law exponent",
  "curve.kind": "Load curve",
  "masses.corner": "Corner weight, left",
  "masses.cornerRight": "Corner weight, right",
  "masses.unsprung": "Unsprung weight, each side",
};

/** What one entry of a list is called. */
const ENTRY_LABELS: Readonly<Record<string, string>> = {
  points: "Point",
  vertices: "Vertex",
  rows: "Row",
  from: "Point",
  to: "Point",
  triangles: "Triangle",
  matched: "Point",
  center: "Point of the center",
  profile: "Profile point",
  outline: "Corner",
};

/**
 * The label of the field at a pattern of keys, such as `truck`, `body`, `*`, `name`. A coordinate of a point is called by
 * the letter its meaning starts with: `x, forward`.
 */
export function fieldLabel(pattern: readonly string[], meaning: string): string {
  const end = pattern.at(-1) ?? "";
  if (/^\d+$/.test(end)) return /^[a-z]\b/.exec(meaning)?.[0] ?? end;
  const entry = end === "*" ? ENTRY_LABELS[pattern.at(-2) ?? ""] : undefined;
  if (entry !== undefined) return entry;
  const keys = pattern.filter((key) => key !== "*");
  const last = keys.at(-1) ?? "";
  return LABELS[keys.slice(-2).join(".")] ?? LABELS[last] ?? inWords(last);
}

/** `hubFace` → `Hub face`. */
function inWords(key: string): string {
  const words = key.replace(
    /([a-z\d])([A-Z])/g,
    (_, end: string, start: string) => `${end} ${start.toLowerCase()}`,
  );
  return words.charAt(0).toUpperCase() + words.slice(1);
}
