import { createStore } from "zustand/vanilla";
import type { KeyValueStore } from "../../shell/storage/keyValueStore.ts";

/** What a shop writes on its sheets. Kept in the browser; no part of any setup. */
export interface SheetFields {
  readonly shop: string;
  readonly customer: string;
  readonly truck: string;
  /** A picture as a data URL; "" = none. */
  readonly logo: string;
  /** The wheels and tires the shop has, a table of separated values; "" = none. */
  readonly wheels: string;
}

const KEY = "customer-sheet";
const EMPTY: SheetFields = { shop: "", customer: "", truck: "", logo: "", wheels: "" };

/** Fields from storage, which may hold anything. Only a picture made here is taken for a logo. */
export function readSheetFields(stored: unknown): SheetFields {
  const held = (typeof stored === "object" && stored !== null ? stored : {}) as Record<string, unknown>;
  const text = (value: unknown) => (typeof value === "string" ? value : "");
  const logo = text(held.logo);
  return {
    shop: text(held.shop),
    customer: text(held.customer),
    truck: text(held.truck),
    logo: logo.startsWith("data:image/png;base64,") ? logo : "",
    wheels: text(held.wheels),
  };
}

/**
 * The fields, kept in a box: read once, then written at every change, one write after the other. Where the browser keeps
 * nothing they last as long as the page. What was typed before the box answered stands.
 */
export function sheetFieldsIn(box: KeyValueStore) {
  const store = createStore<SheetFields>()(() => EMPTY);
  let typed: Partial<SheetFields> = {};
  const read = box.get([KEY]).then(
    ([stored]) => store.setState({ ...readSheetFields(stored), ...typed }),
    () => {},
  );
  let writing: Promise<void> = read;
  return {
    store,
    /** Settles when all that was typed so far is written, or cannot be. */
    written: () => writing,
    change(fields: Partial<SheetFields>) {
      typed = { ...typed, ...fields };
      store.setState(fields);
      // Another tab may have written the other fields meanwhile.
      writing = writing
        .then(() => box.update(KEY, (before) => ({ ...readSheetFields(before), ...fields })))
        .catch(() => {});
    },
  };
}
