import type { ChangeReport, FoundChange } from "../../../studies/change/changeTypes.ts";
import {
  type ChangeSpeech,
  changeSentence,
  changeTitle,
  movesSentences,
} from "../../../studies/wording/changeWords.ts";
import {
  againSentence,
  LIKELY_CAUTION,
  LIKELY_SIGN,
  matterRows,
  oddsNotes,
  oddsSentence,
} from "../../../studies/wording/oddsWords.ts";
import { AS_IT_IS, chosenSentence, STILL_WORKING } from "../../../studies/wording/packetTexts.ts";
import type { ChosenChange } from "../../choose/change/chosenChanges.ts";
import { keptOrder } from "../../choose/change/effortOrder.ts";
import { byEffort, type useChanges } from "../../choose/change/useChanges.ts";
import { Matters } from "../../choose/odds/OddsBody.tsx";
import type { useOdds } from "../../parts/odds/OddsLine.tsx";
import { keepTogether } from "../../words/keyWords.ts";

/** The notes on odds that a person needs beside them; the others are on the page. */
const TOLD_ON_PAPER = 2;

type ChoosePageProps = {
  /** What to change is told in any case, once it is worked out. */
  isWhole: boolean;
  odds: ReturnType<typeof useOdds>;
  /** There are odds to be told, now or once they are worked out. */
  isToldOdds: boolean;
  changes: ReturnType<typeof useChanges>;
  /** The list that the truck was chosen from; null = it was made otherwise. */
  chosen: ChosenChange | null;
};

/** How likely the truck clears, and the smallest changes that make it clear, least effort first; each where it is known. */
export function ChoosePage({
  isWhole,
  odds: { answered, speech },
  isToldOdds,
  changes: { answered: own, speech: ownSpeech },
  chosen,
}: ChoosePageProps) {
  const odds = answered?.answer ?? null;
  const again = odds && againSentence(odds, speech);
  const { format } = ownSpeech;
  const picked = chosen?.report.changes[chosen.at];
  const rows = odds ? matterRows(odds, speech) : [];
  return (
    <>
      {odds ? (
        <>
          <p>
            {LIKELY_SIGN} {keepTogether(oddsSentence(odds, speech))}
          </p>
          {again !== null && <p>{keepTogether(again)}</p>}
          {rows.length > 0 && (
            <table>
              <Matters rows={rows} />
            </table>
          )}
          <p className="packet-caution">
            {oddsNotes(odds, speech).slice(0, TOLD_ON_PAPER).join(" ")} {LIKELY_CAUTION}
          </p>
        </>
      ) : (
        isToldOdds && (
          <>
            <h3>Odds</h3>
            <p>{answered?.failure ?? STILL_WORKING}</p>
          </>
        )
      )}
      {chosen && picked && (
        <>
          <h3>What to change</h3>
          <p>{keepTogether(chosenSentence(chosen.of, changeTitle(picked, { ...chosen.speech, format })))}</p>
          <Changes report={chosen.report} speech={{ ...chosen.speech, format }} chosen={picked} />
        </>
      )}
      {(own.answer !== null || isWhole) && (
        <>
          {/* Alone on the page it is called so at its head. */}
          {(chosen || odds || isToldOdds) && <h3>{chosen ? AS_IT_IS : "What to change"}</h3>}
          {own.answer ? (
            <Changes report={own.answer} speech={ownSpeech} />
          ) : (
            <p>{own.failure ?? STILL_WORKING}</p>
          )}
        </>
      )}
    </>
  );
}

type ChangesProps = {
  report: ChangeReport;
  speech: ChangeSpeech;
  /** The one that was chosen. Default none. */
  chosen?: FoundChange;
};

/** A list of changes, least effort first. */
function Changes({ report, speech, chosen }: ChangesProps) {
  return (
    <>
      <p>{keepTogether(changeSentence(report, speech))}</p>
      <ol className="packet-changes">
        {byEffort(report, keptOrder()).map((change) => {
          const title = changeTitle(change, speech);
          return (
            <li key={title}>
              <strong>
                {keepTogether(title)}
                {change === chosen && " (chosen)"}
              </strong>{" "}
              {movesSentences(change, speech).join(" ")}
            </li>
          );
        })}
      </ol>
    </>
  );
}
