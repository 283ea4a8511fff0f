import { changeSentence, changeTitle, movesSentences } from "../../../studies/wording/changeWords.ts";
import {
  againSentence,
  LIKELY_CAUTION,
  LIKELY_SIGN,
  matterRows,
  oddsNotes,
  oddsSentence,
} from "../../../studies/wording/oddsWords.ts";
import { keptOrder } from "../../choose/change/effortOrder.ts";
import { byEffort, type useChanges } from "../../choose/change/useChanges.ts";
import { Matters } from "../../choose/odds/OddsBody.tsx";
import type { useOdds } from "../../parts/odds/OddsLine.tsx";
import { keepTogether } from "../../words/keyWords.ts";

type ChoosePageProps = {
  odds: ReturnType<typeof useOdds>;
  changes: ReturnType<typeof useChanges>;
};

/** How likely the truck clears, and the smallest changes that make it clear, least effort first; each where it is known. */
export function ChoosePage({ odds: { answered, speech }, changes }: ChoosePageProps) {
  const odds = answered?.answer ?? null;
  const again = odds && againSentence(odds, speech);
  const found = changes.answered.answer;
  return (
    <>
      {odds && (
        <>
          <p>
            {LIKELY_SIGN} {keepTogether(oddsSentence(odds))}
          </p>
          {again !== null && <p>{keepTogether(again)}</p>}
          <table>
            <Matters rows={matterRows(odds, speech)} />
          </table>
          <p className="packet-caution">
            {oddsNotes(odds, speech).join(" ")} {LIKELY_CAUTION}
          </p>
        </>
      )}
      {found && (
        <>
          <h3>What to change</h3>
          <p>{keepTogether(changeSentence(found, changes.speech))}</p>
          <ol className="packet-changes">
            {byEffort(found, keptOrder()).map((change) => (
              <li key={changeTitle(change, changes.speech)}>
                <strong>{keepTogether(changeTitle(change, changes.speech))}</strong>{" "}
                {movesSentences(change, changes.speech).join(" ")}
              </li>
            ))}
          </ol>
        </>
      )}
    </>
  );
}
