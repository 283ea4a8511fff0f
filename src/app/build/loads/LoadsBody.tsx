import "./loads.css";
import { useDeferredValue, useEffect, useMemo } from "react";
import { useStore } from "zustand";
import { loadsJson } from "../../../studies/documents/loadsJson.ts";
import type { LoadsCase, LoadsReport } from "../../../studies/loads/loadsReport.ts";
import { variantWeights } from "../../../studies/strength/variantWeights.ts";
import { LOADS_CAUTIONS } from "../../../studies/wording/cautions.ts";
import { NO_SHARES_YET } from "../../../studies/wording/drawingWords.ts";
import {
  casePoseWords,
  deflectionText,
  FORCE_WORDS,
  governsSentence,
  howLoadsSentence,
  noFrameSentence,
} from "../../../studies/wording/loadsWords.ts";
import { CatalogRow } from "../../parts/catalogs/CatalogRow.tsx";
import { documentFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { givenCatalogs } from "../../state/givenCatalogs.ts";
import { setLoadsView, useLoadsView } from "../../state/loadsView.ts";
import { useStage } from "../../state/stageSettings.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { whyNone } from "../../work/answerCache.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { BuildWays, UsualBuildNote } from "../unbuilt/BuildWays.tsx";
import { ForceTable } from "./ForceTable.tsx";
import { LargestForces } from "./LargestForces.tsx";
import { ShareStrip } from "./ShareStrip.tsx";

/** Driving, straight ahead. */
const HOME = { travel: 0, steer: 0 } as const;

const POSES = { home: "driving, straight ahead", now: "as shown", worst: "where it is worst" } as const;

export type LoadsBodyProps = { truck: Truck };

/** What is asked, and what it comes to; the cautions always beside it. */
export function LoadsBody({ truck }: LoadsBodyProps) {
  const travel = useDeferredValue(useWorkbench((s) => s.travel));
  const steer = useDeferredValue(useWorkbench((s) => s.steer));
  const mode = useLoadsView((s) => s.pose);
  const materials = useStore(givenCatalogs, (s) => s.given.materials?.catalogs.materials);
  const pose = mode === "worst" ? null : mode === "home" ? HOME : { travel, steer };
  const question = { pose, materials };
  const loads = useAnswer("loads", truck, { question });
  const failure = loads && whyNone(loads);
  useEffect(() => () => setLoadsView({ arrows: [] }), []);
  return (
    <div className="loads">
      {failure !== null ? (
        <p role="alert">The loads could not be worked out: {failure}</p>
      ) : loads?.answer == null ? (
        <p className="fold-fine" role="status">
          Working out the loads…
        </p>
      ) : loads.answer.ok ? (
        <Answer truck={truck} report={loads.answer.report} />
      ) : (
        <p role="status">
          No loads yet: <code>{loads.answer.issue.key}</code> {loads.answer.issue.mend}.
        </p>
      )}
      <CatalogRow />
      <p className="loads-cautions">{LOADS_CAUTIONS}</p>
    </div>
  );
}

function Answer({ truck, report }: { truck: Truck; report: LoadsReport }) {
  const format = useFormat();
  const side = useStage((s) => s.side);
  const wanted = useLoadsView((s) => s.case);
  const names = [...new Set(report.cases.map(({ name }) => name))];
  const name = wanted !== null && names.includes(wanted) ? wanted : (names[0] ?? "");
  const one = report.cases.find((each) => each.name === name && each.side === side);
  const sentences = [governsSentence(report, truck.setup, format), noFrameSentence(report.noFrame)];
  return (
    <>
      <Choices names={names} name={name} />
      <UsualBuildNote truck={truck} />
      {truck.setup.build === null && (
        <>
          <p role="status">{NO_SHARES_YET}</p>
          <BuildWays />
        </>
      )}
      {sentences.map((text) => text !== null && <p key={text}>{text}</p>)}
      {one ? (
        <OneCase one={one} />
      ) : (
        <p role="status">The linkage cannot reach this pose, or cannot carry the load in it.</p>
      )}
      {report.worst.length > 0 && <LargestForces worst={report.worst} />}
      <SaveMenu
        of="the loads"
        files={[
          documentFile(truck, "loads", "The loads", () => {
            const { document } = workbench.getState();
            const weights = variantWeights(document, truck.file);
            return loadsJson(report, truck.setup.units, weights);
          }),
        ]}
      />
      <p className="fold-fine">{howLoadsSentence(report, format.units)}</p>
    </>
  );
}

function Choices({ names, name }: { names: readonly string[]; name: string }) {
  const mode = useLoadsView((s) => s.pose);
  return (
    <div className="loads-choices">
      <label>
        Load case{" "}
        <select value={name} onChange={(event) => setLoadsView({ case: event.target.value })}>
          {names.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </label>
      <fieldset>
        <legend>Pose</legend>
        {(["home", "now", "worst"] as const).map((one) => (
          <label key={one}>
            <input
              type="radio"
              name="loads-pose"
              checked={mode === one}
              onChange={() => setLoadsView({ pose: one })}
            />{" "}
            {POSES[one]}
          </label>
        ))}
      </fieldset>
    </div>
  );
}

function OneCase({ one }: { one: LoadsCase }) {
  const format = useFormat();
  const isShown = useArrows(one);
  return (
    <>
      <p>
        “{one.name}”, {casePoseWords(one, format)}.{" "}
        {!isShown && (
          <button
            type="button"
            className="small-button"
            onClick={() => workbench.getState().setPose(one.travel, one.steer)}
          >
            Show this pose
          </button>
        )}
      </p>
      <ForceTable one={one} />
      {one.strength && <ShareStrip stresses={one.strength.stresses} />}
      {one.strength?.deflection && (
        <p>
          The hub face deflects {deflectionText(one.strength.deflection, format.units)} (+ = top outward),
          against the line of the ball joints.
        </p>
      )}
    </>
  );
}

/** Hands the forces to the stage while they are those of the pose it shows. @returns whether they are */
function useArrows(one: LoadsCase): boolean {
  const isFollowing = useLoadsView((s) => s.pose === "now");
  const travel = useWorkbench((s) => s.travel);
  const steer = useWorkbench((s) => s.steer);
  const isThere = Math.abs(one.travel - travel) < 1e-6 && Math.abs(one.steer - steer) < 1e-9;
  const isShown = isFollowing || isThere;
  const arrows = useMemo(
    () =>
      isShown
        ? [
            ...one.applied.map(({ at, force }) => ({ name: "Load", at, force })),
            ...(["lowerBallJoint", "upperBallJoint", "tieRod"] as const).map((name) => ({
              name: FORCE_WORDS[name],
              ...one.on[name],
            })),
          ]
        : [],
    [one, isShown],
  );
  useEffect(() => setLoadsView({ arrows }), [arrows]);
  return isShown;
}
