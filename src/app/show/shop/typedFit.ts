import { createStore } from "zustand/vanilla";
import type { TypedFit } from "../../../studies/chart/addFit.ts";

/** A truck's own tire size and rim width, as they are typed. */
export type OwnFit = Pick<TypedFit, "size" | "rimWidth">;

/** What is typed of a wheel to be added; null = nothing, so that it is the truck's own, whichever truck that is. */
export type HeldFit = Omit<TypedFit, keyof OwnFit> & Readonly<Record<keyof OwnFit, string | null>>;

/** The same wherever the form stands; as long as the page. */
export const typedFit = createStore<HeldFit>()(() => ({
  size: null,
  rimWidth: null,
  by: "backspacing",
  at: "",
  name: "",
}));

/** What the form shows, for a truck. */
export function filledFit(held: HeldFit, own: OwnFit): TypedFit {
  return { ...held, size: held.size ?? own.size, rimWidth: held.rimWidth ?? own.rimWidth };
}

/** What stays for the next wheel once one is added: it is often of the same tire and rim width. What is the truck's own stays that. */
export function nextFit(typed: TypedFit, own: OwnFit): HeldFit {
  const kept = (key: keyof OwnFit) => (typed[key].trim() === own[key] ? null : typed[key]);
  return { size: kept("size"), rimWidth: kept("rimWidth"), by: typed.by, at: "", name: "" };
}
