import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { Result, Setup } from "../../setup/types/types.ts";
import { type WindowField, windowField } from "../window/windowField.ts";
import { SPACER } from "./effort.ts";

/** mm. Thicker spacers are no common practice: two inches. */
const THICKEST = 50.8;

/** mm. What counts as none: a field's ends may not be allowed themselves. */
const NONE = 1e-6;

/**
 * The field that may be changed at a key: as a window has it, or a wheel spacer, whose thickness stands the wheel farther out by
 * as much, whichever way the file tells where its face is.
 */
export function changeField(document: unknown, setup: Setup, key: string, file: string): Result<WindowField> {
  if (key !== SPACER) return windowField(document, setup, key, file);
  const hasOffset = valueAt(document, ["wheel", "offset"]) !== undefined;
  const found = windowField(document, setup, hasOffset ? "wheel.offset" : "wheel.backspacing", file);
  if (!found.ok) return found;
  const { path, now, least, put } = found.value;
  return {
    ok: true,
    value: {
      path: path satisfies KeyPath,
      key,
      kind: "length",
      now: 0,
      least: -NONE,
      most: Math.min(THICKEST, now - least),
      put: (typed, thick) => put(typed, now - thick),
    },
  };
}
