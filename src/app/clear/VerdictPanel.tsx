import "./verdictPanel.css";
import { answerState } from "../../studies/doubts/doubt.ts";
import { answerHeadline, answerSentence } from "../../studies/wording/answerWords.ts";
import { countedSentence } from "../../studies/wording/limitSentences.ts";
import { toldEntry } from "../../studies/wording/verdictFacts.ts";
import { verdictSentence } from "../../studies/wording/verdictSentence.ts";
import { ExampleFields } from "../measure/ExampleFields.tsx";
import { goToField } from "../measure/fields/fieldAsked.ts";
import { StartButton } from "../measure/worksheet/StartButton.tsx";
import { useWaitingFor } from "../measure/worksheet/useWaitingFor.ts";
import { ConfirmedNotes } from "../parts/ConfirmedNotes.tsx";
import { CutShort } from "../parts/CutShort.tsx";
import { DoubtNotes } from "../parts/DoubtNotes.tsx";
import { StateMark } from "../parts/StateMark.tsx";
import { StandingSwitch, StandingTag } from "../parts/standing.tsx";
import { useHeldHeight } from "../parts/useHeldHeight.ts";
import { goToStation, type Station, useStation } from "../state/address.ts";
import { useDoubts } from "../state/useDoubts.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { keepTogether } from "../words/keepTogether.ts";
import { useAnswer } from "../work/useAnswer.ts";
import { NoVerdictYet } from "./NoVerdictYet.tsx";
import { ReachLimits } from "./ReachLimits.tsx";

/** The answer over the whole range of travel and steering, and the way to its worst pose. */
export function VerdictPanel() {
  const truck = useWorkbench((s) => s.truck);
  const waiting = useWaitingFor();
  const check = useAnswer("check", waiting ? null : truck);
  const format = useFormat();
  const setPose = useWorkbench((s) => s.setPose);
  const doubtsOf = useDoubts();
  const station = useStation();
  const held = useHeldHeight<HTMLElement>(check?.answer === null && check.failure === null);
  if (truck && waiting) return <NoVerdictYet progress={waiting} />;
  if (!truck || !check) return null;
  const doubts = doubtsOf(truck);
  const { answer: report, failure } = check;
  const isFirst = report === null && failure === null;
  const state = report ? answerState(report, doubts) : null;
  const worst = report && toldEntry(report);
  return (
    <section ref={held} className="verdict" data-verdict={state ?? undefined} aria-labelledby="verdict-title">
      <div className="verdict-head">
        <h2 id="verdict-title" className="label">
          Over the whole range of travel and steering
        </h2>
        {truck.bolted.setup.alignment.targets && <StandingSwitch />}
        <StandingTag />
      </div>
      <div className="verdict-row" role="status" aria-busy={isFirst}>
        {state && (
          <p className="verdict-word">
            <StateMark word={state} />
            {answerHeadline(state)}
          </p>
        )}
        <p className="verdict-sentence">
          {report &&
            state &&
            keepTogether(answerSentence(verdictSentence(report, truck.model, format), state, doubts))}
          {isFirst && "Checking every height and steering angle…"}
          {report === null && failure !== null && `The check could not be finished: ${failure}`}
        </p>
      </div>
      <div className="verdict-notes">
        <CutShort study="nearest" of={[check]} />
        <DoubtNotes doubts={doubts} canConfirm goToField={goToField} />
        <ConfirmedNotes truck={truck} />
        <ExampleFields truck={truck} />
        <StartButton />
      </div>
      {report && (
        <ReachLimits
          truck={truck}
          limits={report.limits}
          counted={countedSentence(report.limitsPassed, report.limitedBy)}
        />
      )}
      {worst && !worst.together && (
        <button
          type="button"
          className="button verdict-go"
          onClick={() => {
            setPose(worst.travel, worst.steer);
            if (!isPoseSeen(station)) goToStation("clear");
          }}
        >
          Go there
        </button>
      )}
    </section>
  );
}

/** Whether a pose is seen where somebody is: the truck is drawn there, and there is room for the picture. */
function isPoseSeen(station: Station): boolean {
  switch (station) {
    case "clear":
      return true;
    case "measure":
    case "choose":
      return document.querySelector(".stage-panel")?.checkVisibility() ?? false;
    case "build":
    case "show":
      return false;
  }
}
