import { useId, useState } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { type PlotSpec, unitText } from "../../parts/plotNumbers.ts";
import { bandEndText, readBandEnd } from "./bandEnd.ts";
import { setBand, useBand } from "./plotBands.ts";

/** Says what is wanted of a plot's curves: a band drawn behind them. */
export function BandForm({ spec, format }: { spec: PlotSpec; format: LengthFormat }) {
  return (
    <fieldset className="plot-band-form">
      <legend>
        Wanted band, {unitText(spec.y.measure, format)} <small>either end is optional</small>
      </legend>
      <BandEnd end="low" name="from" spec={spec} format={format} />
      <BandEnd end="high" name="to" spec={spec} format={format} />
    </fieldset>
  );
}

type BandEndProps = { end: "low" | "high"; name: string; spec: PlotSpec; format: LengthFormat };

function BandEnd({ end, name, spec, format }: BandEndProps) {
  const id = useId();
  const { measure } = spec.y;
  const band = useBand(spec.id);
  const [typed, setTyped] = useState<string | null>(null);
  const isRead = typed === null || readBandEnd(typed, measure, format) !== null;
  return (
    <label>
      {name}{" "}
      <input
        size={8}
        value={typed ?? bandEndText(band[end], measure, format)}
        aria-invalid={!isRead}
        aria-describedby={isRead ? undefined : id}
        onChange={({ target: { value } }) => {
          setTyped(value);
          const read = readBandEnd(value, measure, format);
          const { [end]: _, ...other } = band;
          if (read !== null) setBand(spec.id, read === undefined ? other : { ...other, [end]: read });
        }}
        onBlur={() => isRead && setTyped(null)}
      />
      {!isRead && (
        <span id={id} className="plot-band-fault">
          ✕ not understood; type {measure === "angle" ? "-0.5" : "1 1/4 or 32 mm"}
        </span>
      )}
    </label>
  );
}
