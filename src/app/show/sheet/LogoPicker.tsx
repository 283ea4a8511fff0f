import { useState } from "react";
import { changeSheetFields, useSheetFields } from "../shop/useSheetFields.ts";

/** Pixels. Sharp in print at the size a logo has on the sheet; no camera's whole picture is kept. */
const MOST = 640;

/**
 * A picture file as a small PNG, in a data URL: whatever else the file held (a place, a script) is left behind.
 * @returns null when the browser cannot read it as a picture
 */
async function logoFrom(file: Blob): Promise<string | null> {
  const address = URL.createObjectURL(file);
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    // A drawing without a size of its own has none to keep to.
    const [width, height] = [image.naturalWidth || MOST, image.naturalHeight || MOST];
    const share = Math.min(1, MOST / Math.max(width, height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(width * share));
    canvas.height = Math.max(1, Math.round(height * share));
    const context = canvas.getContext("2d");
    if (!context) return null;
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    return canvas.toDataURL("image/png");
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(address);
  }
}

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
