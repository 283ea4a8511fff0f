import { parseKeyText } from "../../../setup/types/keyPath.ts";
import { windowField } from "../../../studies/window/windowField.ts";
import type { FieldWindow } from "../../../studies/window/windowTypes.ts";
import { askedOf } from "../../state/madeOf.ts";
import { differInAtMost } from "../../state/sameButField.ts";
import type { Truck } from "../../state/truck.ts";
import type { Answered } from "../../work/answerCache.ts";

/**
 * The window of a field as it is told of a truck: its answer. Until there is one, that of the truck before where only the field's
 * value differs: what fits is the same, and where it stands now is told at once. null = nothing is known yet.
 * @param last what was answered last, of whatever truck and field
 */
export function windowTold(
  truck: Truck,
  field: string,
  { answer }: Pick<Answered<"window">, "answer">,
  last: Pick<Answered<"window">, "answer" | "wish"> | null,
): FieldWindow | null {
  if (answer !== null) return answer;
  const path = parseKeyText(field);
  if (path === null || last?.answer?.field !== field || !differInAtMost(path, last.wish.truck, truck))
    return null;
  const now = windowField(askedOf(truck), truck.setup, field, truck.file);
  return now.ok ? { ...last.answer, now: now.value.now } : null;
}
