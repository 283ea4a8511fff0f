import { keyText } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";

/**
 * A document for `--json`, and of an aligned truck what it was aligned to: `reached` false = as near as its adjusters go.
 * `fromExample` names the fields that hold an example's numbers, where there are any.
 */
export function withStanding(document: object, { alignment, fromExample }: Setup): object {
  const { targets, standing } = alignment;
  const told = fromExample ? { ...document, fromExample: fromExample.fields.map(keyText) } : document;
  if (standing === undefined || targets === null) return told;
  const { stance } = targets;
  return { ...told, alignment: { shown: "aligned", stance, reached: standing.reached } };
}
