import { useStore } from "zustand";
import { indexedDbBox } from "../../shell/storage/box.ts";
import { type SheetFields, sheetFieldsIn } from "./sheetFields.ts";

const kept = sheetFieldsIn(indexedDbBox());

/** What the shop wrote on its sheets. */
export function useSheetFields(): SheetFields {
  return useStore(kept.store);
}

/** Writes some of them. */
export const changeSheetFields = kept.change;
