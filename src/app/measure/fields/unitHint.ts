import type { SetupField } from "../../../setup/fields/setupField.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";

/** The unit of bare text in a field, as it stands behind it; "" = none. */
export function unitHint(field: SetupField, units: FileUnits): string {
  switch (field.kind) {
    case "length":
    case "signedLength":
      return units;
    case "angle":
      return "°";
    default:
      return "";
  }
}
