import { IssueList } from "../../setup/reading/issueList.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { resolveDocument } from "../../setup/resolveDocument.ts";
import { isWithin, type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { Result, Setup } from "../../setup/types/types.ts";
import { modelAsked } from "../alignment/modelAsked.ts";
import type { ModelResult } from "../model/model.ts";
import type { WindowField } from "./windowField.ts";

/** A truck whose fields are tried at other values. */
export interface TruckToVary {
  /** As typed, the variant shown applied, without variants. */
  readonly document: unknown;
  /** What was made of it. */
  readonly setup: Setup;
  /** The file's name for the issues. */
  readonly file: string;
  /** Aligned anew at each value. */
  readonly isAligned: boolean;
}

/** A field and the value it is tried at. */
export type Setting = readonly [field: WindowField, value: number];

/** One place of a document, or a block of it, written otherwise. */
export interface Change {
  /** The place that is written; nothing of the body outside of it is. */
  readonly path: KeyPath;
  /** @returns a copy of a document with it */
  readonly put: (document: unknown) => unknown;
}

const BODY: KeyPath = ["truck", "body"];

/** The truck with some fields at other values, all else as it is; or what then does not go together. */
export function truckWith(truck: TruckToVary, settings: readonly Setting[]): ModelResult {
  return changedTruck(
    truck,
    settings.map(([field, value]) => ({ path: field.path, put: (typed) => field.put(typed, value) })),
  );
}

/** The truck with some places written otherwise, all else as it is; or what then does not go together. */
export function changedTruck(truck: TruckToVary, changes: readonly Change[]): ModelResult {
  const changed = changedSetup(truck, changes);
  if (!changed.ok) return changed;
  return modelAsked({ setup: changed.value, file: truck.file, isAligned: truck.isAligned });
}

/** The same, not put together. */
export function changedSetup(
  { document, setup, file }: TruckToVary,
  changes: readonly Change[],
): Result<Setup> {
  const issues = new IssueList(file);
  // A scanned fender need not be read again because the hub face moved.
  const inBody = [
    ...new Set(changes.flatMap(({ path }) => (isWithin(path, BODY) ? [Number(path[BODY.length])] : []))),
  ];
  const changed = changes.reduce((typed, { put }) => put(typed), document);
  const own = inBody.map((at) => valueAt(changed, [...BODY, at]));
  const lighter = setAt(removeAt(changed, ["variants"]), BODY, own);
  const resolved = resolveDocument(lighter, issues, new Map());
  if (resolved === null) return { ok: false, issues: issues.all() };
  const body = setup.truck.body.map((as, i) => resolved.truck.body[inBody.indexOf(i)] ?? as);
  const { variant, variantNames, fromExample, confirmed } = setup;
  const kept = { variant, variantNames, fromExample, confirmed };
  return { ok: true, value: { ...resolved, truck: { ...resolved.truck, body }, ...kept } };
}
