import { lengthText } from "../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { MAY_RUB } from "../work/bandEdges.ts";

export type BandKeyProps = {
  /** Where bands end, mm, rising. */
  edges: readonly number[];
  format: LengthFormat;
};

/** What bands of the envelope mean: distance to the body. Each has its own hatching beside its color. */
export function BandKey({ edges, format }: BandKeyProps) {
  const text = (i: number) => lengthText(edges[i]!, format);
  const nearest = (edge: number) => (edge > MAY_RUB ? "may rub or pass too near" : "may rub");
  const bands = edges.map((edge, i) => (i === 0 ? `${nearest(edge)}: under ${text(0)}` : `to ${text(i)}`));
  bands.push(edges.length > 0 ? "farther" : "any distance");
  return (
    <p className="band-key">
      {bands.map((label, i) => (
        <span key={label} className="band-item">
          <svg viewBox="0 0 26 14" width="26" height="14" aria-hidden="true" className={`band band-${i}`}>
            <rect width="26" height="14" />
            {i === 0 && <path d="M-6 14L8 0M0 14L14 0M6 14L20 0M12 14L26 0M18 14L32 0" />}
            {i === 1 && <path d="M-4 14L10 0M7 14L21 0M18 14L32 0" />}
          </svg>
          {label}
        </span>
      ))}
    </p>
  );
}
