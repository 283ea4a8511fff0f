import { useDeferredValue, useMemo } from "react";
import { variantNames } from "../../../setup/editing/resolveShown.ts";
import { truckName } from "../../../studies/wording/truckName.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { type NamedTruck, namedTrucks } from "./otherTrucks.ts";

export interface VariantTrucks {
  /** The setup as it stands, then its variants; the same list until one changes. */
  readonly columns: readonly NamedTruck[];
  /** Those of them that stand and are not shown. */
  readonly others: readonly { readonly name: string; readonly truck: NonNullable<NamedTruck["truck"]> }[];
  readonly format: LengthFormat;
}

/** The setup and its variants as trucks, made when what is shown has had its turn. */
export function useVariantTrucks(): VariantTrucks {
  const document = useDeferredValue(useWorkbench((s) => s.document));
  const file = useWorkbench((s) => s.file);
  const meshes = useWorkbench((s) => s.meshes);
  const variant = useWorkbench((s) => s.variant);
  const isAligned = useWorkbench((s) => s.isAligned);
  const format = useFormat();
  const names = JSON.stringify(variantNames(document));
  const columns = useMemo(
    () => (document === null ? [] : namedTrucks(document, file, meshes, names, isAligned)),
    [document, file, meshes, names, isAligned],
  );
  const others = useMemo(
    () =>
      columns.flatMap((column) =>
        column.truck && column.variant !== variant
          ? [{ name: truckName(column.variant), truck: column.truck }]
          : [],
      ),
    [columns, variant],
  );
  return { columns, others, format };
}
