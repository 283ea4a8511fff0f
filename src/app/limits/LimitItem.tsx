import type { Setup } from "../../setup/types.ts";
import { isPassed } from "../../studies/limits/limitsPassed.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { StateMark } from "../panels/StateMark.tsx";
import { useWorkbench } from "../state/useWorkbench.ts";
import { marginText } from "./leastText.ts";
import { placeOf } from "./limitPlaces.ts";
import type { LimitRow } from "./limitRows.ts";

export type LimitItemProps = {
  row: LimitRow;
  setup: Setup;
  format: LengthFormat;
};

/** One limit: what is left of it at the pose shown, and where it is passed first. Pressing it goes there. */
export function LimitItem({ row, setup, format }: LimitItemProps) {
  const setPose = useWorkbench((s) => s.setPose);
  const { name, now, isAlike, overall } = row;
  const place = overall && placeOf(overall, setup, format);
  const isAnywhere = overall !== null && isPassed(overall);
  const word = row.isPassed ? "rubs" : isAnywhere ? "close" : "clear";
  const side = now !== null && !isAlike ? now.side : null;
  return (
    <li>
      <button
        type="button"
        className={`limit-row${row.isPassed ? " limit-passed" : ""}`}
        disabled={place === null}
        onClick={() => place && setPose(place.travel, place.steer)}
      >
        <StateMark word={word} />
        <span className="limit-name">
          {name} {side && <span className="limit-side">{side}</span>}
          <span className="limit-where">{place ? place.words : "over the range: working it out"}</span>
        </span>
        <span className="limit-amount">
          {now === null ? "out of reach" : <Amount text={marginText(now, format)} />}
        </span>
        <ShareBar share={now?.share ?? 0} isPassed={row.isPassed} />
      </button>
    </li>
  );
}

/** The word light, the amount heavy. */
function Amount({ text }: { text: string }) {
  const [word = "", ...amount] = text.split(" by ");
  if (amount.length === 0) return word;
  return (
    <>
      <span className="limit-word">{word} by</span> {amount.join(" by ")}
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
