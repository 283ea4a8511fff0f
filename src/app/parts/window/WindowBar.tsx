import "./windowBar.css";
import { isInside, type VariantTick } from "../../../studies/window/variantTicks.ts";
import type { FieldWindow } from "../../../studies/window/windowTypes.ts";
import { fitsSentence, valueText, type WindowSpeech } from "../../../studies/wording/windowWords.ts";

export type WindowBarProps = {
  window: FieldWindow;
  speech: WindowSpeech;
  /** Where variants stand. Default none. */
  ticks?: readonly VariantTick[];
  /** A value tried, mm or radians. Default the field's own. */
  value?: number;
};

/** Share of the bar left free outside the ends and marks shown. */
const MARGIN = 0.08;

/** How many sorts of ticks are told apart by their number. */
const LETTERS = "abcdefghijklmnopqrstuvwxyz";

/** A range drawn to scale: what fits is solid between two stops, what does not is hatched; marks stand for values. */
export function WindowBar({ window, speech, ticks = [], value = window.now }: WindowBarProps) {
  const { format } = speech;
  const [low, high] = shownRange(window, [value, ...ticks.map((tick) => tick.value)]);
  const at = (one: number) => `${(100 * (one - low)) / (high - low)}%`;
  const text = (one: number) => valueText(one, window.kind, format);
  const named = ticks.filter(({ name }) => name !== null);
  return (
    <div className="window-bar">
      <div className="window-track" role="img" aria-label={fitsSentence(window, speech)}>
        {window.fits.map((fit) => {
          const [from, to] = [Math.max(fit.from, low), Math.min(fit.to, high)];
          return (
            <span
              key={fit.from}
              className="window-fit"
              style={{ left: at(from), right: `${(100 * (high - to)) / (high - low)}%` }}
            />
          );
        })}
        {named.map((tick, i) => (
          <span key={tick.name} className="window-tick" style={{ left: at(tick.value) }}>
            {LETTERS[i]}
          </span>
        ))}
        <span className="window-now" style={{ left: at(value) }} />
      </div>
      <div className="window-scale" aria-hidden="true">
        <span>{text(low)}</span>
        <span>{text(high)}</span>
      </div>
      {named.length > 0 && (
        <ul className="window-ticks">
          {named.map((tick, i) => (
            <li key={tick.name}>
              <b>{LETTERS[i]}</b> {tick.name}: {text(tick.value)},{" "}
              {isInside(window, tick.value) ? "✓ fits" : "✕ does not fit"}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** The part of the range looked at that has something to show. */
function shownRange({ fits, from, to }: FieldWindow, values: readonly number[]): readonly [number, number] {
  const ends = fits.flatMap((fit) => [fit.from, fit.to]);
  const all = [...ends, ...values];
  // Where nothing fits all that was looked at is shown, and no values beyond it.
  if (fits.length === 0) return [Math.min(from, ...values), Math.max(to, ...values)];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const margin = MARGIN * (high - low || 1);
  return [low - margin, high + margin];
}
