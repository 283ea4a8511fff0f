import { useStore } from "zustand";
import { indexedDbStore } from "../../shell/storage/keyValueStore.ts";
import { type SheetFields, sheetFieldsIn } from "./sheetFields.ts";

const kept = sheetFieldsIn(indexedDbStore());

/** What the shop wrote on its sheets. */
export function useSheetFields(): SheetFields {
  return useStore(kept.store);
}

/** Writes some of them. */
export const changeSheetFields = kept.change;
