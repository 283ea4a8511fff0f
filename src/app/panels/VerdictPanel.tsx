import "./verdictPanel.css";
import { countedSentence } from "../../studies/wording/limitSentences.ts";
import { verdictSentence } from "../../studies/wording/verdictSentence.ts";
import { StandingSwitch } from "../aligning/StandingSwitch.tsx";
import { StandingTag } from "../aligning/StandingTag.tsx";
import { useFormat } from "../state/useFormat.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { keepTogether } from "../words/keepTogether.ts";
import { ReachLimits } from "./ReachLimits.tsx";
import { StateMark } from "./StateMark.tsx";

const HEADLINES = { rubs: "Rubs", close: "Close", clear: "Clears" } as const;

/** The answer over the whole range of travel and steering, and the way to its worst pose. */
export function VerdictPanel() {
  const truck = useWorkbench((s) => s.truck);
  const check = useWorkbench((s) => s.check);
  const format = useFormat();
  const setPose = useWorkbench((s) => s.setPose);
  if (!truck) return null;
  const report = check.status === "done" ? check.report : null;
  const worst = report?.worst ?? null;
  return (
    <section
      className="verdict"
      data-verdict={report?.verdict ?? check.status}
      aria-labelledby="verdict-title"
    >
      <div className="verdict-head">
        <h2 id="verdict-title" className="label">
          Over the whole range of travel and steering
        </h2>
        {truck.bolted.setup.alignment.targets && <StandingSwitch />}
        <StandingTag />
      </div>
      <div className="verdict-row" role="status" aria-busy={check.status === "checking"}>
        {report && (
          <p className="verdict-word">
            <StateMark word={report.verdict} />
            {HEADLINES[report.verdict]}
          </p>
        )}
        <p className="verdict-sentence">
          {report && keepTogether(verdictSentence(report, truck.model, format))}
          {check.status === "checking" && "Checking every height and steering angle…"}
          {check.status === "failed" && `The check could not be finished: ${check.message}`}
        </p>
      </div>
      {report && (
        <ReachLimits
          truck={truck}
          limits={report.limits}
          counted={countedSentence(report.limitsPassed, report.limitedBy)}
        />
      )}
      {worst && (
        <button
          type="button"
          className="button verdict-go"
          onClick={() => setPose(worst.travel, worst.steer)}
        >
          Go there
        </button>
      )}
    </section>
  );
}
