import type { SetupField } from "../../../setup/fields/setupField.ts";

/** Keys of which a block needs one or the other, so that the schema lets each be left out. Their own switch changes which. */
const ONE_OF: readonly string[] = [
  "wheel.backspacing",
  "wheel.offset",
  "tire.size",
  "tire.diameter",
  "tire.sectionWidth",
  "truck.body.*.file",
];

/** Whether a field can be emptied, so that its default holds or nothing does. */
export function mayBeLeftOut({ required, pattern }: SetupField): boolean {
  return !required && !ONE_OF.includes(pattern.join("."));
}
