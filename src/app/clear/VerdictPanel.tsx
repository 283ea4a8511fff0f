import "./verdictPanel.css";
import type { Progress } from "../../setup/worksheet/worksheetState.ts";
import { answerState } from "../../studies/doubts/doubt.ts";
import type { CheckEntry } from "../../studies/reports/pairSearch.ts";
import type { ReachLimit } from "../../studies/reports/reachLimits.ts";
import { answerHeadline, answerSentence } from "../../studies/wording/answerWords.ts";
import { countedSentence, limitSentence } from "../../studies/wording/limitSentences.ts";
import { truckName } from "../../studies/wording/truckName.ts";
import { verdictSentence } from "../../studies/wording/verdictSentence.ts";
import { HOW_SURE, noVerdictYet } from "../../studies/wording/worksheetNotes.ts";
import { ExampleFields } from "../measure/ExampleFields.tsx";
import { goToField } from "../measure/fields/fieldAsked.ts";
import { StartButton } from "../measure/worksheet/StartButton.tsx";
import { worksheetView } from "../measure/worksheet/worksheetView.ts";
import { ConfirmedNotes } from "../parts/ConfirmedNotes.tsx";
import { CutShort } from "../parts/CutShort.tsx";
import { DoubtNotes } from "../parts/DoubtNotes.tsx";
import { jumpTo } from "../parts/JumpBar.tsx";
import { LateBody, LateExtra } from "../parts/late.tsx";
import { StateMark } from "../parts/StateMark.tsx";
import { StandingSwitch, StandingTag } from "../parts/standing.tsx";
import { useCalm } from "../parts/useCalm.ts";
import { useCheckNow } from "../parts/useSettled.ts";
import { useHeldHeight } from "../parts/useSize.ts";
import { goToStation, type Station, useStation } from "../state/address.ts";
import { useHasStep } from "../state/lastStep.ts";
import { setStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useDoubts } from "../state/useDoubts.ts";
import { useWaitingFor } from "../state/useWaitingFor.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { askForWheels } from "../state/wheelsAsked.ts";
import { keepTogether } from "../words/keyWords.ts";

// What is told after a change is not needed before there is one.
const LAST_CHANGE = new LateBody(async () => (await import("./LastChange.tsx")).LastChange);

/** The answer over the whole range of travel and steering, and the way to its worst pose. */
export function VerdictPanel({ truck }: { truck: Truck }) {
  const waiting = useWaitingFor();
  const check = useCheckNow(waiting ? null : truck);
  const format = useFormat();
  const doubtsOf = useDoubts();
  const station = useStation();
  const hasStep = useHasStep();
  const isDragged = useWorkbench((s) => s.isGesturing);
  const held = useHeldHeight<HTMLElement>(check?.answer === null && check.failure === null, isDragged);
  // What stands under the answer, and would wrap anew, stays as it was before a drag until that ends.
  const calm = useCalm(truck);
  if (waiting) return <NoVerdictYet progress={waiting} />;
  if (!check) return null;
  const doubts = doubtsOf(truck);
  const { answer: report, failure } = check;
  const isFirst = report === null && failure === null;
  const state = report ? answerState(report, doubts) : null;
  const worst = report?.worst ?? null;
  const { variant } = truck.setup;
  return (
    <section ref={held} className="verdict" data-verdict={state ?? undefined} aria-labelledby="verdict-title">
      <div className="verdict-head">
        <h2 id="verdict-title" className="label">
          {/* Beside two trucks that are compared it says of which one it is. */}
          {station === "show" && `Of ${variant === null ? `the ${truckName(null)}` : `“${variant}”`}: `}
          {station === "show" ? "over" : "Over"} the whole range of travel and steering
        </h2>
        {truck.bolted.setup.alignment.targets && <StandingSwitch />}
        <StandingTag />
        <CutShort study="verdict" of={[check]} />
        <div className="last-change">
          {hasStep && station !== "show" && <LateExtra of={LAST_CHANGE} props={{ truck }} about={truck} />}
        </div>
      </div>
      <div className="verdict-row" role="status" aria-busy={isFirst}>
        {isFirst && (
          <p className="verdict-word" aria-hidden="true">
            {"\u00a0"}
          </p>
        )}
        {state && (
          <p className="verdict-word">
            <StateMark word={state} />
            {answerHeadline(state, truck.setup)}
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
        <DoubtNotes doubts={doubtsOf(calm)} canConfirm goToField={goToField} />
        <ConfirmedNotes truck={calm} />
        <ExampleFields truck={calm} />
        <HowSure truck={calm} />
        <StartButton truck={calm} />
        {station !== "show" && (
          <button type="button" className="link-button" onClick={askForWheels}>
            Will other wheels clear?
          </button>
        )}
      </div>
      {report && (
        <ReachLimits
          truck={truck}
          limits={report.limits}
          counted={countedSentence(report.limitsPassed, report.limitedBy)}
        />
      )}
      {!worst?.together && <GoThere to={worst} />}
    </section>
  );
}

/** The way to how likely the answer is, where readings tell how well the truck is known. */
function HowSure({ truck: { setup } }: { truck: Truck }) {
  const station = useStation();
  if (setup.readings.length === 0 || station === "show") return null;
  return (
    <p className="how-sure">
      {HOW_SURE}{" "}
      <button
        type="button"
        className="link-button"
        onClick={() => jumpTo("choose", "[data-fold='odds'] > summary")}
      >
        How likely is it?
      </button>
    </p>
  );
}

/** mm, and share of full lock: rounding. */
const SAME = 1e-6;

/** The way to a pose; quiet while it is on the stage. @param to null = not known yet; its room stays */
function GoThere({ to }: { to: Pick<CheckEntry, "travel" | "steer" | "side"> | null }) {
  const setPose = useWorkbench((s) => s.setPose);
  const station = useStation();
  const isOn = useWorkbench(
    (s) => to !== null && Math.abs(to.travel - s.travel) < SAME && Math.abs(to.steer - s.steer) < SAME,
  );
  const isThere = isOn && isPoseSeen(station);
  return (
    <button
      type="button"
      className="button verdict-go verdict-worst"
      aria-label={isThere ? "Go there: you are there" : "Go there"}
      aria-pressed={isThere}
      data-nowhere={to === null || undefined}
      onClick={() => {
        if (to) {
          setPose(to.travel, to.steer);
          // A view of one wheel is of the one where it is.
          setStage({ side: to.side });
        }
        if (!isPoseSeen(station)) goToStation("clear");
      }}
    >
      {/* Both take their room: it is as wide with either. */}
      <span>Go there</span>
      <span>You are there</span>
    </button>
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

type NoVerdictYetProps = {
  progress: Progress;
};

/** In place of the answer while too little of a truck is read: how much more it takes, and the way there. */
function NoVerdictYet({ progress }: NoVerdictYetProps) {
  const isElsewhere = useStation() !== "measure";
  return (
    <section className="verdict" data-verdict="unfinished" aria-labelledby="verdict-title">
      <div className="verdict-head">
        <h2 id="verdict-title" className="label">
          Over the whole range of travel and steering
        </h2>
      </div>
      <div className="verdict-row verdict-waiting" role="status">
        <p className="verdict-sentence">{noVerdictYet(progress)}</p>
      </div>
      {isElsewhere && (
        <button
          type="button"
          className="button verdict-go"
          onClick={() => {
            worksheetView.setState({ isFields: false });
            goToStation("measure");
          }}
        >
          To the worksheet
        </button>
      )}
    </section>
  );
}

type ReachLimitsProps = {
  truck: Truck;
  limits: readonly ReachLimit[];
  /** What joints, stops and shocks leave of the range, in a sentence; "" = all of it. */
  counted: string;
};

/** Where the linkage cannot follow within the range that was checked, or a limit is passed: the verdict ends there. */
function ReachLimits({ truck, limits, counted }: ReachLimitsProps) {
  const format = useFormat();
  if (limits.length === 0 && counted === "") return null;
  return (
    <ul className="verdict-limits">
      {limits.map((limit) => (
        <li key={`${limit.side} ${limit.along} ${limit.startsAt}`}>
          {keepTogether(limitSentence(limit, truck.model, format))}
        </li>
      ))}
      {counted !== "" && <li>{counted}</li>}
    </ul>
  );
}
