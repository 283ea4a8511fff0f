/** Over the closed groups of an order's form that parts are chosen in. */
export const CHOOSE_PARTS = "Parts: choose each from the shop’s catalog, or type its numbers.";

/** What a list of a catalog's parts says while none is chosen. */
export const NONE_CHOSEN = "choose here, or type the numbers below";

/** A part that a group of an order's form is about, and what of it is ordered. */
export interface OrderPick {
  /** What it is called where a group has several; undefined = its group's title says it. */
  readonly of: string | undefined;
  /** The part of the catalog; null = none is chosen, undefined = no catalog has such parts. */
  readonly item: string | null | undefined;
  /** Numbers of it stand in the order. */
  readonly isTyped: boolean;
}

/** What of its parts is ordered, on a closed group: `upper Plover 41, lower not chosen`. */
export function picksNote(picks: readonly OrderPick[]): string {
  return picks
    .map(({ of, item, isTyped }) => {
      const none = item === null ? "not chosen" : "not given";
      const stands = item ?? (isTyped ? "by its numbers" : none);
      return of === undefined ? stands : `${of} ${stands}`;
    })
    .join(", ");
}
