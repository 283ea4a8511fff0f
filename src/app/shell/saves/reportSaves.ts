import { EFFORT } from "../../../studies/change/changeField.ts";
import { changeJson } from "../../../studies/documents/changeJson.ts";
import { loadsJson } from "../../../studies/documents/loadsJson.ts";
import { oddsJson } from "../../../studies/documents/oddsJson.ts";
import { windowJson } from "../../../studies/documents/windowJson.ts";
import { oddsDocument } from "../../../studies/odds/oddsTruck.ts";
import { variantWeights } from "../../../studies/strength/variantWeights.ts";
import { measuredFile } from "../../measure/worksheet/WorksheetPanel.tsx";
import { tellsWithin } from "../../parts/odds/OddsLine.tsx";
import { documentFile, reportFile } from "../../parts/reportFiles.ts";
import type { SavedFile } from "../../parts/useSaving.ts";
import { askedOf, shownOf } from "../../state/madeOf.ts";
import type { Truck } from "../../state/truck.ts";
import { workbench } from "../../state/workbench.ts";
import type { Answer, JobName, Question } from "../../work/jobs.ts";
import { answerOnce } from "../../work/savedReport.ts";

/** Every report of a truck as a document, worked out when it is saved. */
export function reportSaves(truck: Truck): readonly SavedFile[] {
  const { travel, steer } = workbench.getState();
  const { limits, airSpring, alignment, readings } = truck.setup;
  return [
    reportFile(truck, { of: "check" }, "The check of every pose"),
    reportFile(truck, { of: "pose", travel, steer }, "The pose shown: alignment, points, gaps"),
    reportFile(truck, { of: "map" }, "The map"),
    reportFile(truck, { of: "sweep" }, "The sweep and each part’s worst pose"),
    reportFile(truck, { of: "geometry" }, "Steering and geometry"),
    reportFile(truck, { of: "floor" }, "Stance and floor"),
    ...(limits !== null || airSpring !== null ? [reportFile(truck, { of: "limits" }, "The limits")] : []),
    ...(airSpring !== null ? [reportFile(truck, { of: "air" }, "The air springs")] : []),
    ...(alignment.targets !== null ? [reportFile(truck, { of: "align" }, "The alignment")] : []),
    ...askedSaves(truck),
    ...(readings.length > 0 ? [measuredFile()] : []),
  ];
}

/** Those that a panel asks for beside the page. */
function askedSaves(truck: Truck): readonly SavedFile[] {
  const { units } = truck.setup;
  const document = askedOf(truck);
  const asked = <J extends JobName>(
    of: J & string,
    about: string,
    job: { readonly question: Question<J>; readonly told: (answer: Answer<J>) => object },
  ) =>
    documentFile(truck, of, about, async (signal, onShare) =>
      job.told(await answerOnce({ job: of, truck, question: job.question, given: null }, signal, onShare)),
    );
  return [
    asked("change", "What to change", {
      question: { document, order: EFFORT },
      told: (report) => changeJson(report, units),
    }),
    ...(tellsWithin(truck)
      ? [
          asked("odds", "The odds", {
            question: { document: oddsDocument(shownOf(truck)) },
            told: (report) => oddsJson(report, units),
          }),
        ]
      : []),
    asked("window", "How narrow, how wide the hub face may be", {
      question: { document, field: "knuckle.hubFace" },
      told: (window) => windowJson(window, units),
    }),
    asked("loads", "The loads, where they are worst", {
      question: { pose: null },
      told: (answer) => {
        if (!answer.ok) throw new Error(`${answer.issue.key} ${answer.issue.mend}`);
        return loadsJson(answer.report, units, variantWeights(truck.document, truck.file));
      },
    }),
  ];
}
