import { IssueList } from "../../setup/reading/issueList.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { resolveDocument } from "../../setup/resolveDocument.ts";
import { isWithin, type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { BodyPart, Setup } from "../../setup/types/types.ts";
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

const BODY: KeyPath = ["truck", "body"];

/** The truck with some fields at other values, all else as it is; or what then does not go together. */
export function truckWith(
  { document, setup, file, isAligned }: TruckToVary,
  settings: readonly Setting[],
): ModelResult {
  const issues = new IssueList(file);
  const inBody = settings.map(([{ path }]) => path).find((path) => isWithin(path, BODY));
  const changed = settings.reduce((typed, [field, value]) => field.put(typed, value), document);
  // A scanned fender need not be read again because the hub face moved.
  const own = inBody === undefined ? [] : [valueAt(changed, [...BODY, inBody[2]!])];
  const lighter = setAt(removeAt(changed, ["variants"]), BODY, own);
  const resolved = resolveDocument(lighter, issues, new Map());
  if (resolved === null) return { ok: false, issues: issues.all() };
  const [part] = resolved.truck.body;
  const body = setup.truck.body.map(
    (as, i): BodyPart => (i === inBody?.[2] && part !== undefined ? part : as),
  );
  const { variant, variantNames, fromExample, confirmed } = setup;
  const whole = {
    ...resolved,
    truck: { ...resolved.truck, body },
    variant,
    variantNames,
    fromExample,
    confirmed,
  };
  return modelAsked({ setup: whole, file, isAligned });
}
