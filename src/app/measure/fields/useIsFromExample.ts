import { isWithin, type KeyPath } from "../../../setup/types/keyPath.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** Whether what stands at a path is still an example's number: the field's, or its point's or list's. */
export function useIsFromExample(path: KeyPath): boolean {
  return useWorkbench(
    (s) =>
      s.truck?.setup.fromExample?.fields.some((field) => isWithin(path, field) || isWithin(field, path)) ??
      false,
  );
}
