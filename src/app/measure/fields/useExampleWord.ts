import { ASSUMED_LAYOUT } from "../../../setup/worksheet/assumedLayout.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** What a number is called that nobody has measured on the truck shown. */
export function useExampleWord(): "from the example" | "assumed" {
  return useWorkbench((s) =>
    s.truck?.setup.fromExample?.of === ASSUMED_LAYOUT ? "assumed" : "from the example",
  );
}
