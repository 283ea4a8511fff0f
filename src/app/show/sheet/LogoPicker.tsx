import { useState } from "react";
import { logoFrom } from "./logoFrom.ts";
import { changeSheetFields, useSheetFields } from "./useSheetFields.ts";

/** Picks the shop's logo, which then stands on every sheet; it stays in this browser. */
export function LogoPicker() {
  const { logo } = useSheetFields();
  const [trouble, setTrouble] = useState("");
  return (
    <div className="sheet-logo-picker">
      <label>
        <span className="label">Logo</span>
        <input
          type="file"
          accept="image/*"
          aria-describedby="sheet-logo-trouble"
          onChange={async (event) => {
            const input = event.target;
            const file = input.files?.[0];
            if (!file) return;
            const picture = await logoFrom(file);
            setTrouble(picture ? "" : `${file.name} is no picture this browser can read`);
            if (picture) changeSheetFields({ logo: picture });
            input.value = "";
          }}
        />
      </label>
      {logo !== "" && (
        <button type="button" className="button" onClick={() => changeSheetFields({ logo: "" })}>
          Remove logo
        </button>
      )}
      <p id="sheet-logo-trouble" role="status" className="sheet-trouble">
        {trouble}
      </p>
    </div>
  );
}
