import type { Setup } from "../../../setup/types/types.ts";
import { isPassed } from "../../../studies/limits/limitsPassed.ts";
import { type LimitRow, limitMark, limitPlace, shareInHand } from "../../../studies/wording/limitRows.ts";
import { leastMarginText, marginText, placeText } from "../../../studies/wording/limitTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";

export type LimitItemProps = {
  row: LimitRow;
  setup: Setup;
  format: LengthFormat;
};

/** One limit: the least that is left of it and where that is, and what is left at the pose shown. Pressing it goes there. */
export function LimitItem({ row, setup, format }: LimitItemProps) {
  const setPose = useWorkbench((s) => s.setPose);
  const { name, now, isAlike, overall } = row;
  const place = overall && limitPlace(overall, format);
  const isAnywhere = overall !== null && isPassed(overall);
  const side = overall !== null && !row.isLeastAlike ? overall.side : null;
  return (
    <li>
      <button
        type="button"
        className="limit-row"
        disabled={place === null}
        onClick={() => place && setPose(place.travel, place.steer)}
      >
        <StateMark word={limitMark(row)} />
        <span className="limit-name">
          {name} {side && <span className="limit-side">{side}</span>}
          <span className="limit-where">
            {place ? placeText(place, setup, format) : "over the range: working it out"}
          </span>
        </span>
        <span className={`limit-amount${isAnywhere ? " limit-passed" : ""}`}>
          <span className="sr-only">least: </span>
          {overall === null ? "…" : <Amount text={leastMarginText(overall, format)} />}
        </span>
        <span className={`limit-now${row.isPassed ? " limit-passed" : ""}`}>
          <span className="sr-only">now: </span>
          {now === null ? "out of reach" : <Amount text={marginText(now, format)} />}
          {now !== null && !isAlike && <span className="limit-side"> {now.side}</span>}
        </span>
        <ShareBar share={shareInHand(row)} isPassed={isAnywhere} />
      </button>
    </li>
  );
}

/** The word light, the amount heavy. */
function Amount({ text }: { text: string }) {
  const [, word, amount] = /^(in hand|passed by) (.*)$/.exec(text) ?? [];
  if (word === undefined || amount === undefined) return text;
  return (
    <>
      <span className="limit-word">{word}</span> {keepTogether(amount)}
    </>
  );
}

/** How much of a limit is left, as a bar; past the limit it is hatched and grows the other way. */
function ShareBar({ share, isPassed: past }: { share: number; isPassed: boolean }) {
  const size = 100 * Math.min(1, Math.abs(share));
  return (
    <span className="limit-bar" aria-hidden="true">
      <span
        className={past ? "limit-over" : "limit-left"}
        style={{ width: `${Math.max(size, past ? 3 : 0).toFixed(1)}%` }}
      />
    </span>
  );
}
