import type { CatalogKind } from "../../../setup/catalogs/catalogDocument.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";

/** One line of the order's form: a field, a point, a choice out of a list, or a heading. */
export type OrderLine =
  | { readonly kind: "field" | "point" | "caliper" | "any"; readonly path: KeyPath }
  | { readonly kind: "item"; readonly path: KeyPath; readonly of: CatalogKind }
  | { readonly kind: "stance"; readonly path: KeyPath }
  | { readonly kind: "heading"; readonly text: string };

/** A part that a group is about. */
export interface OrderFormPart {
  /** Of the order. */
  readonly block: string;
  /** What it is called where its group has several. */
  readonly of?: string;
  /** It can be chosen from a catalog. */
  readonly isInCatalog: boolean;
}

/** Fields that a shop fills in together. */
export interface OrderFormGroup {
  readonly title: string;
  readonly of: readonly KeyPath[];
  readonly lines: readonly OrderLine[];
  /** The parts it is about. Default none. */
  readonly parts?: readonly OrderFormPart[];
}

const at = (...keys: readonly string[]): KeyPath => ["order", ...keys];

const fields = (block: readonly string[], ...keys: readonly string[]): readonly OrderLine[] =>
  keys.map((key) => ({ kind: "field", path: at(...block, ...key.split(".")) }));

const heading = (text: string): OrderLine => ({ kind: "heading", text });

const joint = (which: "upperBallJoint" | "lowerBallJoint"): readonly OrderLine[] => [
  { kind: "item", path: at(which, "item"), of: "ballJoints" },
  ...fields([which], "taper", "seat", "studLength", "housingDiameter", "housingHeight"),
];

/** The order's form, in the order a shop fills it in. */
export const ORDER_FORM: readonly OrderFormGroup[] = [
  {
    title: "Truck and stance",
    of: [at("number"), at("customer"), at("stance")],
    lines: [...fields([], "number", "customer"), { kind: "stance", path: at("stance") }],
  },
  {
    title: "Knuckle",
    of: [at("base"), at("drop"), at("hubFace"), at("pinAngle"), at("pinLead")],
    lines: [
      ...fields([], "drop", "hubFace", "pinAngle", "pinLead"),
      heading("Base knuckle"),
      ...fields(["base"], "name", "span", "pinHeight", "pinAngle", "pinLead", "hubFace"),
      { kind: "point", path: at("base", "steeringArm") },
    ],
  },
  {
    title: "Ball joints",
    of: [at("upperBallJoint"), at("lowerBallJoint")],
    parts: [
      { block: "upperBallJoint", of: "upper", isInCatalog: true },
      { block: "lowerBallJoint", of: "lower", isInCatalog: true },
    ],
    lines: [heading("Upper"), ...joint("upperBallJoint"), heading("Lower"), ...joint("lowerBallJoint")],
  },
  {
    title: "Brake",
    of: [at("brake")],
    parts: [{ block: "brake", isInCatalog: true }],
    lines: [
      { kind: "item", path: at("brake", "item"), of: "brakes" },
      ...fields(["brake"], "rotorDiameter", "rotorThickness", "hatOffset", "hatRegister", "boltPattern"),
      ...fields(["brake"], "leastRim", "bracketThread"),
      { kind: "caliper", path: at("brake", "caliper") },
      { kind: "any", path: at("brake", "bracketHoles") },
    ],
  },
  {
    title: "Hub and wheel",
    of: [at("hub"), at("wheel")],
    parts: [
      { block: "hub", of: "hub", isInCatalog: true },
      { block: "wheel", of: "wheel", isInCatalog: false },
    ],
    lines: [
      { kind: "item", path: at("hub", "item"), of: "hubs" },
      ...fields(["hub"], "boltPattern", "pilot", "register", "rotorSeat"),
      heading("Pin"),
      ...fields(["hub"], "shoulder", "sealDiameter", "innerBearing.number", "innerBearing.bore"),
      ...fields(["hub"], "innerBearing.width", "outerSeat", "outerBearing.number", "outerBearing.bore"),
      ...fields(["hub"], "outerBearing.width", "nutThread", "pinEnd"),
      heading("Wheel"),
      ...fields(["wheel"], "rimDiameter", "rimWidth", "backspacing", "offset", "barrelDiameter"),
      ...fields(["wheel"], "boltPattern", "centerBore"),
    ],
  },
  {
    title: "Steering arm",
    of: [at("steeringArm")],
    parts: [{ block: "steeringArm", isInCatalog: false }],
    lines: [
      ...fields(["steeringArm"], "thread", "rodEndThread", "engagement", "jamNut", "shank"),
      { kind: "point", path: at("steeringArm", "tieRodEnd") },
    ],
  },
  {
    title: "Finish and quantity",
    of: [at("finish"), at("notes"), at("side"), at("quantity")],
    lines: fields([], "finish", "side", "quantity", "notes"),
  },
];
