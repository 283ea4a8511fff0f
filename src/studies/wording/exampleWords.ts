import type { Setup } from "../../setup/types/types.ts";
import type { Doubt } from "../doubts/doubt.ts";

/** What of a setup nobody has measured, as one doubt; none where every number is the truck's own. */
export function exampleDoubts({ fromExample }: Setup): readonly Doubt[] {
  const [first] = fromExample?.fields ?? [];
  if (!fromExample || !first) return [];
  const text = fromExample.isAsItCame
    ? `This is the example “${fromExample.of}”, an invented truck: the answer is about that truck alone.`
    : `${countWords(fromExample.fields.length)} still the example's (“${fromExample.of}”), not measured on this truck.`;
  return [{ kind: "fromExample", path: first, text }];
}

/** The same as a line for a terminal. @param file the file as the user named it */
export function exampleLine(file: string, setup: Setup): string | null {
  const [doubt] = exampleDoubts(setup);
  return doubt ? `${file}: from the example: ${doubt.text}` : null;
}

function countWords(count: number): string {
  return count === 1 ? "1 number is" : `${count} numbers are`;
}
