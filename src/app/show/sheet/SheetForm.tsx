import type { Comparison } from "../counter/useComparison.ts";
import { VariantChoices } from "../counter/VariantChoices.tsx";
import type { SheetFields } from "../shop/sheetFields.ts";
import { changeSheetFields, useSheetFields } from "../shop/useSheetFields.ts";
import { LogoPicker } from "./LogoPicker.tsx";

export type SheetFormProps = {
  comparison: Comparison;
};

const FIELDS: readonly {
  readonly key: Exclude<keyof SheetFields, "logo" | "wheels">;
  readonly label: string;
}[] = [
  { key: "shop", label: "Shop" },
  { key: "customer", label: "Customer" },
  { key: "truck", label: "Truck" },
];

/** What stands on the sheet beside the numbers. It is kept in this browser and sent nowhere. */
export function SheetForm({ comparison }: SheetFormProps) {
  const fields = useSheetFields();
  return (
    <section className="sheet-form" aria-label="On the sheet">
      {FIELDS.map(({ key, label }) => (
        <label key={key}>
          <span className="label">{label}</span>
          <input
            type="text"
            value={fields[key]}
            maxLength={80}
            autoComplete="off"
            onChange={(event) => changeSheetFields({ [key]: event.target.value })}
          />
        </label>
      ))}
      <LogoPicker />
      <p className="sheet-note">All optional. It is kept in this browser and sent nowhere.</p>
      {/* Long with the shop's list: what is typed for every customer stands over it. */}
      <VariantChoices comparison={comparison} isListOpen />
    </section>
  );
}
