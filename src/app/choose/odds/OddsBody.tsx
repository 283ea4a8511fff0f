import "./odds.css";
import { useState } from "react";
import { oddsJson } from "../../../studies/documents/oddsJson.ts";
import {
  againSentence,
  LIKELY_CAUTION,
  LIKELY_SIGN,
  type MatterRow,
  matterRows,
  oddsNotes,
  oddsSentence,
} from "../../../studies/wording/oddsWords.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import { useOdds } from "../../parts/odds/OddsLine.tsx";
import { documentFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { ScrollTable } from "../../parts/ScrollTable.tsx";
import type { Truck } from "../../state/truck.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { whyNone } from "../../work/answerCache.ts";

/** The odds: their sentence, what to measure again, what matters as bars with numbers, what they are made of. */
export function OddsBody({ truck }: { truck: Truck }) {
  const [isStopped, setStopped] = useState(false);
  const { answered, speech } = useOdds(truck, !isStopped);
  if (isStopped)
    return (
      <div className="odds">
        <p>Stopped before it was finished.</p>
        <button type="button" className="button" onClick={() => setStopped(false)}>
          Work out the odds
        </button>
      </div>
    );
  if (answered === null) return null;
  const failure = whyNone(answered);
  if (failure !== null) return <p>The odds could not be worked out: {failure}</p>;
  const report = answered.answer;
  if (report === null)
    return (
      <div className="odds">
        <p role="status">Drawing trucks, and proving whether each clears…</p>
        <progress aria-label="Trucks drawn" max={1} value={answered.underWay?.share ?? 0} />
        <button type="button" className="button" onClick={() => setStopped(true)}>
          Cancel
        </button>
      </div>
    );
  const again = againSentence(report, speech);
  const rows = matterRows(report, speech);
  return (
    <div className="odds">
      <p className="odds-said" role="status">
        <span className="odds-mark" aria-hidden="true">
          {LIKELY_SIGN}
        </span>{" "}
        {keepTogether(oddsSentence(report, speech))}
      </p>
      {again !== null && <p>{keepTogether(again)}</p>}
      <CutShort study="odds" of={[answered]} />
      {rows.length > 0 && (
        <div className="odds-matters">
          <ScrollTable label="What matters most">
            <Matters rows={rows} />
          </ScrollTable>
        </div>
      )}
      <SaveMenu
        of="the odds"
        files={[documentFile(truck, "odds", "The odds", () => oddsJson(report, truck.setup.units))]}
      />
      <div className="fold-fine">
        <p>
          {LIKELY_CAUTION} Type ± after a number at Measure, such as 5 5/8 ± 1/16, to tell how well it is
          known.
        </p>
        <details>
          <summary>How this was worked out</summary>
          {oddsNotes(report, speech).map((note) => (
            <p key={note}>{note}</p>
          ))}
        </details>
      </div>
    </div>
  );
}

/** The rows of a table of what matters most. */
export function Matters({ rows }: { rows: readonly MatterRow[] }) {
  return (
    <>
      <caption>What matters most</caption>
      <thead>
        <tr>
          <th scope="col">Number</th>
          <th scope="col">Known to</th>
          <th scope="col">Share</th>
          <th scope="col">Known twice as well, clears</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.field}>
            <th scope="row">{row.name}</th>
            <td>
              {row.within} <small>{row.source}</small>
            </td>
            <td className="odds-share">
              <span className="odds-bar" aria-hidden="true" style={{ width: `${60 * row.share}%` }} />
              {row.shareText}
            </td>
            <td>{row.again}</td>
          </tr>
        ))}
      </tbody>
    </>
  );
}
