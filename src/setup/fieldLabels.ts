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
  droop: "Full droop",
  bump: "Full bump",
  "stances.travel": "Height, as wheel travel",
  "upperArm.radius": "Upper arm radius",
  "lowerArm.radius": "Lower arm radius",
  "upperBallJoint.radius": "Upper ball joint housing radius",
  "lowerBallJoint.radius": "Lower ball joint housing radius",
  "steeringArm.radius": "Steering arm radius",
  "tieRod.radius": "Tie rod radius",
  "tieRodEnd.radius": "Tie rod end radius",
  "knuckle.radius": "Knuckle body radius",
};

/** What one entry of a list is called. */
const ENTRY_LABELS: Readonly<Record<string, string>> = {
  points: "Point",
  vertices: "Vertex",
  triangles: "Triangle",
  center: "Point of the center",
  profile: "Profile point",
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
