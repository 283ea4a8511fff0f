import { degFromRad, parseAngle } from "../../../units/angle.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { evaluateLength } from "../../../units/lengthExpression.ts";
import { curveText, type Measure, sizeOf } from "../../parts/plotNumbers.ts";

/** An end of a band as typed: undefined = left open, null = not understood. */
export function readBandEnd(
  text: string,
  measure: Measure,
  { units }: LengthFormat,
): number | undefined | null {
  const plain = text.trim().replace("−", "-");
  if (plain === "") return undefined;
  if (measure === "angle") {
    const angle = parseAngle(plain);
    return angle.ok ? angle.rad : null;
  }
  if (measure === "length") {
    const length = evaluateLength(plain, units);
    return length.ok ? length.mm : null;
  }
  const number = Number(plain);
  return Number.isFinite(number) ? number * sizeOf(measure, units) : null;
}

/** An end as it is put into its field. */
export function bandEndText(value: number | undefined, measure: Measure, format: LengthFormat): string {
  if (value === undefined) return "";
  if (measure === "angle") return String(Number(degFromRad(value).toFixed(4)));
  if (measure === "length")
    return curveText(value, measure, format)
      .replace("−", "-")
      .replace(/\.?0* (in|mm)$/, " $1");
  return String(Number((value / sizeOf(measure, format.units)).toFixed(4)));
}
