import type { LengthUnit } from "../../setup/types/types.ts";
import { addFit, type FitNaming, type TypedFit } from "./addFit.ts";
import type { AxisSubject } from "./readAxis.ts";

/** A line that was not taken, and what is wrong of it: a sentence without its full stop. */
export interface LineFault {
  readonly line: string;
  readonly mend: string;
}

export interface AddedFits {
  /** The list with every line that was taken. */
  readonly list: string;
  readonly added: number;
  readonly faults: readonly LineFault[];
}

/**
 * A shop's list with the wheels and tires of some pasted lines more, each checked as one that is typed: tire size, rim width,
 * backspacing or offset and perhaps a name, as a table or a message has them, with tabs, semicolons, commas or spaces between.
 * @param list as `readFits` takes it; "" = there is none yet
 * @param by what the lines tell the mounting face by
 * @param bareUnits of lengths without a unit, but a rim typed as `15 x 8` is in inches
 */
export function addFits(
  list: string,
  text: string,
  by: TypedFit["by"],
  bareUnits: LengthUnit,
  subject: AxisSubject,
  naming: FitNaming,
): AddedFits {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const faults: LineFault[] = [];
  let longer = list;
  for (const line of lines) {
    const added = addFit(longer, typedOf(line, by), bareUnits, subject, naming);
    if (added.ok) longer = added.list;
    else faults.push({ line, mend: told(added.faults, by) });
  }
  return { list: longer, added: lines.length - faults.length, faults };
}

function typedOf(line: string, by: TypedFit["by"]): TypedFit {
  const separator = ["\t", ";", ","].find((one) => line.includes(one));
  // With spaces alone the last of three is what is left: it may be a whole and a fraction.
  const cells = separator
    ? line.split(separator)
    : (/^\s*(\S+)\s+(\S+)\s+(.+)$/.exec(line)?.slice(1) ?? [line]);
  const [size = "", rimWidth = "", at = "", ...name] = cells.map((cell) => cell.trim());
  return { size, rimWidth, by, at, name: name.join(" ").trim() };
}

/** The first of what is wrong, and of what. */
function told(
  faults: Readonly<Partial<Record<keyof TypedFit | "list", string>>>,
  by: TypedFit["by"],
): string {
  const { size, rimWidth, at, name, list } = faults;
  if (size !== undefined) return `tire size ${size}`;
  if (rimWidth !== undefined) return `rim width ${rimWidth}`;
  if (at !== undefined) return `${by} ${at}`;
  return name ?? list ?? "it cannot be read";
}
