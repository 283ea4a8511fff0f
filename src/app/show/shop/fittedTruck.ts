import { effectiveDocument, withoutVariants } from "../../../setup/editing/effectiveDocument.ts";
import { withChangesMine } from "../../../setup/exampleMarks.ts";
import type { Result } from "../../../setup/types/types.ts";
import { type Fit, withFit } from "../../../studies/chart/readFits.ts";
import { type Truck, trucks } from "../../state/truck.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";
import type { WorkbenchState } from "../../state/workbenchState.ts";
import { fitName } from "./shopWheels.ts";

/**
 * The truck that a wheel and tire of the list make of another, before it is put on: under the name of the variant it would become, so
 * that what is worked out of the one is known of the other.
 * @param base the truck: a variant, null = the setup as it stands
 */
export function fittedTruck(
  { good, file, meshes, isAligned }: Pick<WorkbenchState, "good" | "file" | "meshes" | "isAligned">,
  base: string | null,
  fit: Fit,
): Result<Truck> | null {
  if (good === null) return null;
  const made = trucks.make(good.document, file, base, meshes);
  if (!made.ok) return made;
  const on = base === null ? withoutVariants(good.document) : effectiveDocument(good.document, base);
  // Its numbers are the shop's own, as they are once it is put on.
  const fitted = withChangesMine(on, withFit(on, fit, { file, setup: made.value.setup }));
  const name = fitName(base, fit);
  const document = { ...(fitted as TypedDocument), variants: [{ name, patch: {} }] };
  return trucks.make(document, file, name, meshes, isAligned);
}
