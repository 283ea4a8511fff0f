import { useMemo } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { variantNames } from "../../../setup/editing/resolveShown.ts";
import { truckName } from "../../../studies/wording/truckName.ts";
import type { GivenMeshes } from "../../state/givenMeshes.ts";
import { type Truck, trucks } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import type { NamedTruck } from "./alignmentPlots.ts";

/** A truck and what is laid over it: variants of the very document that it was made of, never of another. */
export interface Laid {
  readonly truck: Truck;
  readonly others: readonly NamedTruck[];
}

/** How a truck's variants are put together. */
export interface Making {
  readonly file: string;
  readonly meshes: GivenMeshes;
  readonly isAligned: boolean;
}

/** Names of what is laid over the truck shown, in every plot of the page; gone with the page. */
const laid = createStore<{ readonly names: readonly string[] }>()(() => ({ names: [] }));

/** What can be laid over a truck: the setup as it stands and its variants, but for the one it is of and those that do not go together. */
export function variantsBeside(
  { document, setup }: Truck,
  { file, meshes, isAligned }: Making,
  names?: readonly string[],
): readonly NamedTruck[] {
  if (document === null) return [];
  return [null, ...variantNames(document)].flatMap((variant) => {
    const name = truckName(variant);
    if (variant === setup.variant || names?.includes(name) === false) return [];
    const made = trucks.make(document, file, variant, meshes, isAligned);
    return made.ok ? [{ name, truck: made.value }] : [];
  });
}

/** Whether a truck's document has any variant, so that there is something to lay over it. */
export function hasVariants({ document }: Truck): boolean {
  return variantNames(document).length > 0;
}

/** Follows how variants are put together. */
export function useMaking(): Making {
  const file = useWorkbench((s) => s.file);
  const meshes = useWorkbench((s) => s.meshes);
  const isAligned = useWorkbench((s) => s.isAligned);
  return useMemo(() => ({ file, meshes, isAligned }), [file, meshes, isAligned]);
}

/** A truck with what is laid over it; the same until either changes. */
export function useLaid(truck: Truck): Laid {
  const { names } = useStore(laid);
  const making = useMaking();
  return useMemo(() => ({ truck, others: variantsBeside(truck, making, names) }), [truck, making, names]);
}

/** Names that are laid over whatever is shown. */
export function useLaidNames(): readonly string[] {
  return useStore(laid).names;
}

/** Lays one over, or takes it off again. */
export function layOver(name: string, isLaid: boolean): void {
  laid.setState(({ names }) => ({
    names: isLaid ? [...names.filter((one) => one !== name), name] : names.filter((one) => one !== name),
  }));
}
