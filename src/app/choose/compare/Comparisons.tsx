import { memo, useDeferredValue, useMemo } from "react";
import { variantNames } from "../../../setup/editing/resolveShown.ts";
import { PlotsPanel } from "../../clear/plots/PlotsPanel.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useFormat.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { FanPanel } from "./FanPanel.tsx";
import { namedTrucks } from "./otherTrucks.ts";
import { VariantsPanel } from "./VariantsPanel.tsx";

export type ComparisonsProps = {
  truck: Truck;
};

const Plots = memo(PlotsPanel);
const Variants = memo(VariantsPanel);
const Fan = memo(FanPanel);

/** Below the picture, when what is above it has had its turn: plots, variants side by side, and a field fanned over a range. */
export function Comparisons(props: ComparisonsProps) {
  const truck = useDeferredValue(props.truck);
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
          ? [{ name: column.variant ?? "as it stands", truck: column.truck }]
          : [],
      ),
    [columns, variant],
  );
  return (
    <>
      <Plots truck={truck} variants={others} format={format} />
      <Variants columns={columns} />
      <Fan truck={truck} />
    </>
  );
}
