import { mergePatch } from "../../../src/setup/reading/mergePatch.ts";
import { readSetup } from "../../../src/setup/readSetup.ts";
import { keyText } from "../../../src/setup/types/keyPath.ts";
import type { ChartAsk, ChartCell } from "../../../src/studies/chart/chartTypes.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { type CheckOptions, type CheckReport, checkClearance } from "../../../src/studies/reports/check.ts";

/** The chart by the slow obvious way: each truck written, read, put together and checked by itself. Null = no such truck. */
export function plainLoop(
  document: object,
  { x, y }: Pick<ChartAsk, "x" | "y">,
  options: CheckOptions = {},
): readonly (CheckReport | null)[] {
  return y.entries.flatMap((down) =>
    x.entries.map((across) => {
      const patched = [[x.key, across.typed] as const, [y.key, down.typed] as const].reduce<unknown>(
        (on, [key, typed]) => {
          const done = mergePatch(on as object, patchOf(key, typed));
          if (!done.ok) throw new TypeError(key);
          return done.value;
        },
        document,
      );
      const read = readSetup(JSON.stringify(patched), "loop", null);
      if (!read.ok) return null;
      const made = modelOf(read.value.setup, "loop");
      return made.ok ? checkClearance(made.value, options) : null;
    }),
  );
}

/** A merge patch (RFC 7396) that writes a field, and takes out what says the same in another way. */
function patchOf(key: string, typed: unknown): object {
  const [block, field] = key.split(".") as [string, string];
  const instead: Record<string, object> = {
    "wheel.backspacing": { offset: null },
    "wheel.offset": { backspacing: null },
    "tire.size": { diameter: null, sectionWidth: null, treadWidth: null, profile: null, loadedRadius: null },
    "tire.diameter": { loadedRadius: null },
  };
  return { [block]: { ...instead[keyText([block, field])], [field]: typed } };
}

/** What a cell says, told as a check: its verdict, or nothing. */
export function verdictIn(cell: ChartCell): string {
  return cell.kind === "verdict" ? cell.verdict : cell.kind;
}
