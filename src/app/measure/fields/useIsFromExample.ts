import { isWithin, type KeyPath } from "../../../setup/types/keyPath.ts";
import { ASSUMED_LAYOUT } from "../../../setup/worksheet/assumedLayout.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** Whether what stands at a path is still an example's number: the field's, or its point's or list's. */
export function useIsFromExample(path: KeyPath): boolean {
  return useWorkbench(
    (s) =>
      s.truck?.setup.fromExample?.fields.some((field) => isWithin(path, field) || isWithin(field, path)) ??
      false,
  );
}

/** What a number is called that nobody has measured on the truck shown. */
export function useExampleWord(): "from the example" | "assumed" {
  return useWorkbench((s) =>
    s.truck?.setup.fromExample?.of === ASSUMED_LAYOUT ? "assumed" : "from the example",
  );
}
