import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { FieldWindow, SetBy } from "../window/windowTypes.ts";

/**
 * A window as `window --json` prints it: values in the file's units or degrees. A `…SetBy` has a part with its pose, or `limit`, or
 * `range` where the range asked for ends first, `setup` where a setup may hold nothing beyond, or `unfinished` where the budget
 * did. `sampledEvery` only where nothing is proven between; `closedBy` and `opens` only of an empty window.
 */
export function windowJson(window: FieldWindow, units: LengthUnit) {
  const { field, kind, now, from, to, fits, tolerance, between, closedBy, opens, cutShort } = window;
  const told = (value: number, of = kind) => (of === "angle" ? degFromRad(value) : unitsFromMm(value, units));
  return {
    units,
    field,
    now: told(now),
    ...(cutShort ? { cutShort: true } : {}),
    from: told(from),
    to: told(to),
    fits: fits.map((fit) => ({
      from: told(fit.from),
      to: told(fit.to),
      fromSetBy: setByJson(fit.fromSetBy, units),
      toSetBy: setByJson(fit.toSetBy, units),
    })),
    tolerance: told(tolerance),
    between: between.rank,
    outside: between.rank,
    ...(between.rank === "sampled" ? { sampledEvery: told(between.step) } : {}),
    ...(fits.length > 0
      ? {}
      : {
          closedBy: closedBy.map(({ by, isUnmoved }) => ({ ...setByJson(by, units), unmoved: isUnmoved })),
          opens: opens && {
            field: opens.field,
            from: told(opens.from, opens.kind),
            to: told(opens.to, opens.kind),
            at: told(opens.at),
          },
        }),
  };
}

/** What sets an end, as a document has it. */
export function setByJson(by: SetBy, units: LengthUnit) {
  switch (by.kind) {
    case "part":
      return {
        part: by.part,
        side: by.side,
        travel: unitsFromMm(by.travel, units),
        steer: by.steer,
        gap: unitsFromMm(by.gap, units),
        ...(by.together ? { ride: "together" } : {}),
      };
    case "limit":
      return { limit: by.name };
    case "range":
      return { range: true };
    case "setup":
      return { setup: true };
    case "unfinished":
      return { unfinished: true };
  }
}
