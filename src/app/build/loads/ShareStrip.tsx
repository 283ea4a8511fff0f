import type { Stress } from "../../../studies/loads/strengthOf.ts";
import { stressCells } from "../../../studies/wording/loadsWords.ts";
import { useFormat } from "../../state/useWorkbench.ts";

/** The strip's right end, as a share of yield; what is more is cut off there and says so by its number. */
const END = 1.5;

/** Which hatch a share has: by whole steps a person can tell apart without color. */
function bandOf(share: number): "low" | "half" | "over" {
  return share > 1 ? "over" : share > 0.5 ? "half" : "low";
}

const BANDS = [
  { band: "low", words: "up to 50%: plain" },
  { band: "half", words: "50 to 100%: hatched" },
  { band: "over", words: "over 100%: cross-hatched" },
] as const;

/** Share of yield at every place, along the pin first, then members, welds and joints; by length, hatch and number. */
export function ShareStrip({ stresses }: { stresses: readonly Stress[] }) {
  const format = useFormat();
  return (
    <figure className="share-strip">
      <figcaption>
        Share of the yield of each place’s material. The line across is the yield. A share is a share, not a
        statement that the part will hold.
      </figcaption>
      <ol>
        {stresses.map((stress) => {
          const { place, share, stress: amount, material } = stressCells(stress, format);
          return (
            <li key={place}>
              <span className="share-place">{place}</span>
              <span className="share-bar" aria-hidden="true">
                <span
                  className={`share-fill share-${bandOf(stress.shareOfYield)}`}
                  style={{ inlineSize: `${(100 * Math.min(stress.shareOfYield, END)) / END}%` }}
                />
              </span>
              <span className="share-number">
                <strong>{share}</strong> {amount}, {material}
              </span>
            </li>
          );
        })}
      </ol>
      <ul className="share-key">
        {BANDS.map(({ band, words }) => (
          <li key={band}>
            <span className={`share-fill share-${band}`} aria-hidden="true" /> {words}
          </li>
        ))}
      </ul>
    </figure>
  );
}
