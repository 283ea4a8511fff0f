import { tireDesignDimensions } from "../../gaps/tire/designDimensions.ts";
import { IssueList } from "../../setup/reading/issueList.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { resolveDocument } from "../../setup/resolveDocument.ts";
import { takeWithin } from "../../setup/takeWithin.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import { KnownParts } from "../../setup/types/knownParts.ts";
import type { Setup } from "../../setup/types/types.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { parseTireSize } from "../../units/tireSize.ts";
import { modelAsked } from "../alignment/modelAsked.ts";
import type { ModelResult } from "../model/model.ts";
import type { TruckToVary } from "../window/truckOverField.ts";

/** Blocks that move no gap; they are not read again for each draw. */
const NO_PART_OF_GAPS = [
  "variants",
  "confirmed",
  "order",
  "build",
  "loads",
  "jig",
  "asBuilt",
  "odds",
  "masses",
];

/** What tells how well numbers are known, and is no part of a truck that is drawn. */
const OF_KNOWING = ["readings", "fromExample", "jig"];

/** Only an alignment looks at heights by name. */
const FOR_ALIGNING = ["stances", "floor", "adjusters"];

/** A part whose numbers are not drawn stands as it was read: a scan is not read again. */
const standIn = (index: number) => ({ name: `part ${index}`, kind: "path", radius: 0, points: [[0, 0, 0]] });

/**
 * The document of a truck as far as odds draw its numbers: plain data of no great size, another wherever other odds may come of it.
 * Of the jig its tolerances stay: they tell how well a knuckle is known. @param document the variant shown applied
 */
export function oddsDocument(document: unknown): unknown {
  const tolerances = valueAt(document, ["jig", "tolerances"]);
  const bare = removeAll(document, NO_PART_OF_GAPS);
  const drawn = tolerances === undefined ? bare : setAt(bare, ["jig"], { tolerances });
  const body = valueAt(document, ["truck", "body"]);
  if (!Array.isArray(body)) return drawn;
  const light = body.map((part, i) => (valueAt(part, ["kind"]) === "mesh" ? standIn(i) : part));
  return setAt(drawn, ["truck", "body"], light);
}

function removeAll(document: unknown, keys: readonly string[]): unknown {
  return keys.reduce((rest: unknown, key) => removeAt(rest, [key]), document);
}

/** A truck to be drawn many times: its numbers alone, and how a document of others becomes a truck. */
export interface OddsTruck {
  /** Numbers stand alone; a tire's size is told by the dimensions it stands for. */
  readonly document: unknown;
  readonly setup: Setup;
  readonly file: string;
  /** The truck of a document like it, or what does not go together. */
  readonly made: (document: unknown) => ModelResult;
}

/** @param drawnParts numbers of body parts of which something is drawn */
export function oddsTruck(truck: TruckToVary, drawnParts: ReadonlySet<number>): OddsTruck {
  const { setup, file, isAligned } = truck;
  const light = removeAll(oddsDocument(truck.document), OF_KNOWING);
  const { document: plain } = takeWithin(light, new IssueList(file), new KnownParts());
  const needed = isAligned ? plain : removeAt(removeAll(plain, FOR_ALIGNING), ["alignment", "targets"]);
  const body = valueAt(needed, ["truck", "body"]);
  const parts = Array.isArray(body) ? body.map((part, i) => (drawnParts.has(i) ? part : standIn(i))) : [];
  const document = asDimensions(setAt(needed, ["truck", "body"], parts), setup);
  let isRead = false;
  const made = (drawn: unknown): ModelResult => {
    const issues = new IssueList(file);
    const resolved = resolveDocument(drawn, issues, NO_MESHES, new KnownParts(), isRead);
    if (resolved === null) return { ok: false, issues: issues.all() };
    const whole = setup.truck.body.map((as, i) => (drawnParts.has(i) ? resolved.truck.body[i]! : as));
    const { variant, variantNames } = setup;
    const of = { ...resolved, truck: { ...resolved.truck, body: whole }, variant, variantNames };
    return modelAsked({ setup: of, file, isAligned });
  };
  const base = made(document);
  isRead = base.ok;
  return { document, setup: base.ok ? base.value.setup : setup, file, made };
}

const NO_MESHES = new Map<string, never>();

/** A tire's size told by the dimensions that it stands for on its rim. */
function asDimensions(document: unknown, { tire, wheel, units }: Setup): unknown {
  const size = tire.kind === "size" ? parseTireSize(tire.size) : null;
  if (size === null) return document;
  const { diameter, sectionWidth } = tireDesignDimensions(size, wheel.rimWidth);
  const at = (key: string): KeyPath => ["tire", key];
  const wide = setAt(removeAt(document, at("size")), at("sectionWidth"), unitsFromMm(sectionWidth, units));
  return setAt(wide, at("diameter"), unitsFromMm(diameter, units));
}
