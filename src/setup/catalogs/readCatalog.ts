import type * as z from "zod";
import { resolveJoint } from "../blocks/order/ballJoint.ts";
import { resolveBrake } from "../blocks/order/brake.ts";
import { resolveHub } from "../blocks/order/hub.ts";
import { refuseRepeatedNames } from "../blocks/variants.ts";
import { choiceMend } from "../fields/fields.ts";
import { BlockReading } from "../reading/blockReading.ts";
import { capIssues, IssueList } from "../reading/issueList.ts";
import { parseJson } from "../reading/parseJson.ts";
import { addShapeIssues } from "../shapeIssues.ts";
import { valueAt } from "../types/keyPath.ts";
import type { OrderedBrake, OrderedHub, OrderedJoint } from "../types/orderTypes.ts";
import type { Result } from "../types/types.ts";
import { CATALOG_DOCUMENTS, type CatalogKind } from "./catalogDocument.ts";
import { type Material, readMaterials } from "./readMaterials.ts";
import { type CatalogTube, resolveTube } from "./tube.ts";

/** One item of a catalog: its name, where its numbers come from, and its part in mm and radians. */
export interface CatalogItem<Part> {
  readonly name: string;
  /** null = not said. */
  readonly source: string | null;
  readonly part: Part;
}

/** What an order or a build may name. */
export interface Catalogs {
  readonly ballJoints: readonly CatalogItem<OrderedJoint>[];
  readonly brakes: readonly CatalogItem<OrderedBrake>[];
  readonly hubs: readonly CatalogItem<OrderedHub>[];
  readonly tubes: readonly CatalogItem<CatalogTube>[];
  readonly materials: readonly Material[];
}

/** Catalogs that hold nothing. */
export const NO_CATALOGS: Catalogs = { ballJoints: [], brakes: [], hubs: [], tubes: [], materials: [] };

const KINDS = Object.keys(CATALOG_DOCUMENTS) as CatalogKind[];

/**
 * Reads the text of a catalog file. Never throws: every mistake in the file is an issue.
 * @param file the file as the user named it, for the issues
 * @returns catalogs in which the one of its kind is given and the others are left out
 */
export function readCatalog(text: string, file: string): Result<Partial<Catalogs>> {
  const json = parseJson(text, file, "a catalog");
  if (!json.ok) return json;
  const document = json.value;
  const issues = new IssueList(file);
  const fail = () => ({ ok: false as const, issues: capIssues(issues.all(), issues.more) });
  if (valueAt(document, ["format"]) !== "wellsweep-catalog") {
    issues.add(["format"], valueAt(document, ["format"]), 'must be "wellsweep-catalog": is this a catalog?');
    return fail();
  }
  const kind = KINDS.find((one) => one === valueAt(document, ["kind"]));
  if (kind === undefined) {
    const typed = valueAt(document, ["kind"]);
    issues.add(["kind"], typed, choiceMend(typed, KINDS));
    return fail();
  }
  if (kind === "materials") {
    const read = readMaterials(document, file);
    return read.ok ? { ok: true, value: { materials: read.value } } : read;
  }
  const shape = CATALOG_DOCUMENTS[kind].safeParse(document);
  if (!shape.success) {
    addShapeIssues(issues, document, shape.error);
    return fail();
  }
  const items = itemsOf(kind, shape.data as CatalogAsTyped, issues);
  return issues.isEmpty ? { ok: true, value: { [kind]: items } } : fail();
}

/** Catalogs of parts by their sizes: all but materials, which have none. */
type PartKind = Exclude<CatalogKind, "materials">;
type CatalogAsTyped = z.infer<(typeof CATALOG_DOCUMENTS)[PartKind]>;
type CatalogPart = OrderedJoint | OrderedBrake | OrderedHub | CatalogTube;

function itemsOf(
  kind: PartKind,
  typed: CatalogAsTyped,
  issues: IssueList,
): readonly CatalogItem<CatalogPart>[] {
  const reading = new BlockReading(typed.units, new Map(), issues, ["items"]);
  refuseRepeatedNames(typed.items, reading);
  const resolve = RESOLVE[kind] as (item: object, at: BlockReading) => CatalogPart;
  return typed.items.map((item, i) => {
    const { name, source = null } = item;
    return { name, source, part: resolve(item, reading.inside(i)) };
  });
}

const RESOLVE = {
  ballJoints: resolveJoint,
  brakes: resolveBrake,
  hubs: resolveHub,
  tubes: resolveTube,
} as const;
