import { useState } from "react";
import { type Fit, fitsList, readFits } from "../../../studies/chart/readFits.ts";
import { saveAs } from "../../parts/saveAs.ts";
import { counter } from "../../state/counterStore.ts";
import { workbench } from "../../state/workbench.ts";
import type { Comparison } from "../counter/useComparison.ts";
import { putFitOn, useShopWheels } from "../shop/shopWheels.ts";
import { changeSheetFields } from "../shop/useSheetFields.ts";

export type ShopWheelsProps = { comparison: Comparison };

/** Characters. A list of thousands of wheels has fewer. */
const LONGEST = 500_000;

/** Wheels and tires from a list the shop keeps: one of them on the current truck becomes B. The list stays in this browser. */
export function ShopWheels({ comparison }: ShopWheelsProps) {
  const [trouble, setTrouble] = useState("");
  const { text: wheels, subject, read } = useShopWheels(comparison.first?.truck ?? null);
  if (!subject) return null;
  const take = async (file: File) => {
    const text = file.size > LONGEST ? null : await file.text().catch(() => null);
    if (text === null) {
      setTrouble(`${file.name} is too long for a list of wheels, or cannot be read`);
      return;
    }
    const found = readFits(text, { ...subject, file: file.name });
    setTrouble(found.ok ? "" : `${file.name}: ${found.issues[0]!.mend}`);
    if (found.ok) changeSheetFields({ wheels: text });
  };
  const fits = read?.ok ? read.value : [];
  return (
    <fieldset className="shop-wheels">
      <legend className="label">Wheels the shop has</legend>
      {read && !read.ok && (
        <p className="sheet-trouble">The list cannot be read for this truck: {read.issues[0]!.mend}.</p>
      )}
      {fits.length > 0 && (
        <label>
          Put on the current truck, as B
          <select value="" onChange={(event) => putOn(fits[Number(event.target.value)]!)}>
            <option value="" disabled>
              choose one of {fits.length}
            </option>
            {fits.map((fit, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two lines may be called the same
              <option key={i} value={i}>
                {fit.name}
              </option>
            ))}
          </select>
        </label>
      )}
      <label>
        {wheels === "" ? "Open a list (CSV)" : "Open another list (CSV)"}
        <input
          type="file"
          accept=".csv,.tsv,.txt,text/csv"
          aria-describedby="shop-wheels-trouble"
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            event.target.value = "";
            if (file) void take(file);
          }}
        />
      </label>
      <p id="shop-wheels-trouble" role="status" className="sheet-trouble">
        {trouble}
      </p>
      <span className="row-tools">
        <button
          type="button"
          className="button"
          onClick={() =>
            saveAs("wheels.csv", "text/csv", wheels === "" ? fitsList(subject.document) : wheels)
          }
        >
          {wheels === "" ? "Save one to fill in" : "Save the list"}
        </button>
        {wheels !== "" && (
          <button type="button" className="button" onClick={() => changeSheetFields({ wheels: "" })}>
            Forget the list
          </button>
        )}
      </span>
    </fieldset>
  );
}

/** Compares the setup as it stands with itself on this wheel and tire, as B. */
function putOn(fit: Fit): void {
  const second = putFitOn(workbench, null, fit);
  if (second !== null) counter.setState({ first: null, second, hubFace: null });
}
