import { useDeferredValue, useMemo } from "react";
import { variantNames } from "../../../setup/editing/resolveShown.ts";
import type { GivenMeshes } from "../../state/givenMeshes.ts";
import { memoLast } from "../../state/memoLast.ts";
import { type Truck, trucks } from "../../state/truck.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** One variant of the document put together; null where it has issues. */
export interface NamedTruck {
  /** null = the setup as it stands. */
  readonly variant: string | null;
  readonly truck: Truck | null;
}

/** The setup as it stands, then each of its variants; the same list until the document, its meshes or whether they are aligned change. */
export const namedTrucks = memoLast(
  (
    document: TypedDocument,
    file: string,
    meshes: GivenMeshes,
    names: string,
    isAligned: boolean,
  ): NamedTruck[] =>
    [null, ...(JSON.parse(names) as string[])].map((variant) => {
      const made = trucks.make(document, file, variant, meshes, isAligned);
      return { variant, truck: made.ok ? made.value : null };
    }),
);

/** The truck of a document of our own making; null where it has issues. */
export function truckOfDocument(
  document: TypedDocument,
  file: string,
  meshes: GivenMeshes,
  isAligned: boolean,
): Truck | null {
  const made = trucks.make(document, file, null, meshes, isAligned);
  return made.ok ? made.value : null;
}

/** A document's setup and its variants as trucks, made when what is shown has had its turn. */
export function useVariantTrucks(shown: TypedDocument | null): readonly NamedTruck[] {
  const document = useDeferredValue(shown);
  const file = useWorkbench((s) => s.file);
  const meshes = useWorkbench((s) => s.meshes);
  const isAligned = useWorkbench((s) => s.isAligned);
  const names = JSON.stringify(variantNames(document));
  return useMemo(
    () => (document === null ? [] : namedTrucks(document, file, meshes, names, isAligned)),
    [document, file, meshes, names, isAligned],
  );
}
