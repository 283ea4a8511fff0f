import type { Setup } from "../../setup/types.ts";

/** A document for `--json`, and of an aligned truck what it was aligned to: `reached` false = as near as its adjusters go. */
export function withStanding(document: object, { alignment }: Setup): object {
  const { targets, standing } = alignment;
  if (standing === undefined || targets === null) return document;
  const { stance } = targets;
  return { ...document, alignment: { shown: "aligned", stance, reached: standing.reached } };
}
