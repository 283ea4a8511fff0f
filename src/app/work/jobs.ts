import { type MeshResult, readMesh } from "../../files/readMesh.ts";
import type { Result } from "../../setup/types/types.ts";
import { changeOf } from "../../studies/change/changeOf.ts";
import type { ChangeReport } from "../../studies/change/changeTypes.ts";
import { type ReportAsk, reportText } from "../../studies/documents/reportText.ts";
import { type DrawingAsk, type ShopDrawings, shopDrawings } from "../../studies/drawings/shopDrawings.ts";
import { type GeometryReport, geometryReport } from "../../studies/geometry/geometryReport.ts";
import { type AsBuiltReport, asBuiltReport } from "../../studies/jig/asBuiltReport.ts";
import { type HeightStop, heightStop } from "../../studies/limits/heightWay.ts";
import { type LimitsReport, limitsOf } from "../../studies/limits/limitsOf.ts";
import { type BeforeLock, beforeLocks } from "../../studies/map/beforeLock.ts";
import { lowestTravels } from "../../studies/map/lowestTravels.ts";
import { type NoLimits, type SteerLimits, steerLimits } from "../../studies/map/steerLimits.ts";
import { type WayEnds, wayEnds } from "../../studies/map/wayEnds.ts";
import type { Model } from "../../studies/model/model.ts";
import type { Budget } from "../../studies/numeric/budget.ts";
import {
  type OddsReport,
  type OddsShare,
  oddsOf,
  oddsShare,
  oddsTogether,
  type ShareOfDraws,
} from "../../studies/odds/oddsOf.ts";
import {
  type CheckReport,
  type CheckShare,
  checkClearance,
  checkShare,
  type KnownPose,
  type ShareOfPairs,
} from "../../studies/reports/check.ts";
import { solveOf } from "../../studies/solve/solveOf.ts";
import type { SolveReport, SolveTarget } from "../../studies/solve/solveTypes.ts";
import { windowOf } from "../../studies/window/windowOf.ts";
import type { FieldWindow } from "../../studies/window/windowTypes.ts";

import { type ChartPiece, type ChartQuestion, chartPieceOf } from "./chartAnswer.ts";
import { type DrawnEnvelope, drawnEnvelopeOf, type EnvelopeAsk } from "./drawnEnvelope.ts";
import { type DrawnMap, drawnMapOf, type PoseLimits } from "./drawnMap.ts";
import { type DrawnSection, drawnSectionOf, type SectionCut } from "./drawnSection.ts";
import { type KnuckleView, knuckleViewOf } from "./knuckleViewOf.ts";
import { type LoadsAnswer, type LoadsQuestion, loadsAnswerOf } from "./loadsAnswer.ts";
import { type ShapeAsk, shapeBytes } from "./shapeBytes.ts";

/** How far a truck steers at each of some heights, in their order. */
export interface HeightAnswers {
  readonly steering: readonly (SteerLimits | NoLimits)[];
  /** What keeps the truck from each height; null = it stands there. */
  readonly heights: readonly (HeightStop | null)[];
}

/** What is saved as a file; null = there is none. */
export interface SavedContent {
  readonly content: string | Uint8Array | null;
}

/** What each job is asked and answers: plain data. `given` is handed to a worker once, however often it is asked about. */
export interface Jobs {
  /** Asked with poses known to be bad before, or shown, that a search cut short looks at; null = none. */
  readonly check: { question: readonly KnownPose[] | null; given: null; answer: CheckReport };
  /** Of some of its pairs: a check may be shared out. */
  readonly checkShare: {
    question: ShareOfPairs & { readonly known: readonly KnownPose[] };
    given: null;
    answer: CheckShare;
  };
  readonly map: { question: null; given: null; answer: DrawnMap };
  readonly limits: { question: null; given: null; answer: LimitsReport };
  readonly geometry: { question: null; given: null; answer: GeometryReport };
  /** How far it steers and how low it goes from a pose. */
  readonly poseLimits: { question: { travel: number; steer: number }; given: null; answer: PoseLimits };
  /** The same at its stances, ends of travel and full locks. */
  readonly wayEnds: { question: null; given: null; answer: WayEnds };
  /** At full left lock, at full right lock; null = it cannot stand there. */
  readonly beforeLocks: { question: null; given: null; answer: readonly (BeforeLock | null)[] };
  /** Heights, mm. */
  readonly heights: { question: { travels: readonly number[] }; given: null; answer: HeightAnswers };
  /** What the readings of the jig tell, and what these knuckles do on the truck as bolted on or aligned; null = nothing was read. */
  readonly asBuilt: { question: { isAligned: boolean }; given: null; answer: AsBuiltReport | null };
  /** null = the time did not do for a surface. */
  readonly envelope: { question: EnvelopeAsk; given: null; answer: DrawnEnvelope | null };
  readonly section: { question: SectionCut; given: DrawnEnvelope | null; answer: DrawnSection };
  /** null = there is nothing to draw. */
  readonly knuckleView: { question: null; given: null; answer: KnuckleView | null };
  readonly drawings: { question: DrawingAsk; given: null; answer: Result<ShopDrawings> };
  /** Which values of a field fit. The document: as typed, with the variant shown, without the body. */
  readonly window: { question: { document: unknown; field: string }; given: null; answer: FieldWindow };
  /** Which values of a field give what is wanted; ends in mm or radians. The document as of a window. */
  readonly solve: { question: SolveQuestion; given: null; answer: SolveReport };
  readonly chart: { question: ChartQuestion; given: null; answer: ChartPiece };
  /** What would make it clear. The document as of a window. */
  readonly change: {
    question: { document: unknown; order: readonly string[] };
    given: null;
    answer: ChangeReport;
  };
  /** How likely a truck clears. The document: as `oddsDocument` gives it. */
  readonly odds: { question: OddsQuestion; given: null; answer: OddsReport };
  /** Some of its draws, as one of several searchers makes them. */
  readonly oddsShare: { question: OddsQuestion & ShareOfDraws; given: null; answer: OddsShare };
  readonly loads: { question: LoadsQuestion; given: null; answer: LoadsAnswer };
  /** A document as the command line prints it, or a file as it writes it; null = there is no answer. */
  readonly report: { question: ReportAsk | ShapeAsk; given: null; answer: SavedContent };
  readonly mesh: { question: { name: string; bytes: ArrayBuffer }; given: null; answer: MeshResult };
}
export type JobName = keyof Jobs;
export type Question<J extends JobName> = Jobs[J]["question"];
export type Answer<J extends JobName> = Jobs[J]["answer"];
export type Given<J extends JobName> = Jobs[J]["given"];

/** What a job works with. */
export interface Job<J extends JobName> {
  /** The truck asked about. @throws Error where it does not go together */
  readonly model: () => Model;
  readonly question: Question<J>;
  readonly given: Given<J>;
  readonly budget: Budget;
  /** Tells the share done, 0 … 1. */
  readonly onProgress: (share: number) => void;
}

/** An answer, and whether the budget was spent before it was all of it. */
export interface Outcome<J extends JobName> {
  readonly answer: Answer<J>;
  readonly isCut: boolean;
}

/** `shares`: the draws as they were shared out; left out = they are still to be made. */
interface OddsQuestion {
  readonly document: unknown;
  readonly shares?: readonly OddsShare[];
}

/** `looksOn` as of `SolveOptions`. */
interface SolveQuestion {
  readonly document: unknown;
  readonly field: string;
  readonly target: SolveTarget;
  readonly from: number;
  readonly to: number;
  readonly looksOn: boolean;
}

function truckToVary({ setup }: Model, document: unknown) {
  return { document, setup, file: "", isAligned: setup.alignment.standing !== undefined };
}

/** Rows of the geometry's tables. */
const ROWS = 33;

/** Every long job of the page, as a worker does it. */
export const JOBS: { readonly [J in JobName]: (job: Job<J>) => Outcome<J> } = {
  check({ model, question, budget }) {
    const answer = checkClearance(model(), { budget, known: question ?? [] });
    return { answer, isCut: answer.cutShort === true };
  },
  checkShare({ model, question, budget }) {
    const answer = checkShare(model(), question, { budget, known: question.known });
    return { answer, isCut: answer.isCut };
  },
  map({ model, budget }) {
    const answer = drawnMapOf(model(), budget);
    return { answer, isCut: answer.map.cutShort === true };
  },
  limits({ model, budget }) {
    const answer = limitsOf(model(), budget);
    return { answer, isCut: answer.cutShort === true };
  },
  // A fixed number of poses, a fraction of a second: never cut short.
  geometry: ({ model }) => ({ answer: geometryReport(model(), ROWS), isCut: false }),
  poseLimits({ model, question: { travel, steer }, budget }) {
    const [steering] = steerLimits(model(), [travel], budget.share(2));
    const [lowering] = lowestTravels(model(), [steer], budget.share(1));
    return { answer: { travel, steer, steering: steering!, lowering: lowering! }, isCut: budget.cut };
  },
  beforeLocks: ({ model, budget }) => ({ answer: beforeLocks(model(), budget), isCut: budget.cut }),
  wayEnds: ({ model, budget }) => ({ answer: wayEnds(model(), budget), isCut: budget.cut }),
  heights({ model, question: { travels }, budget }) {
    const half = budget.share(2);
    const heights = travels.map((travel, i) => heightStop(model(), travel, half.share(travels.length - i)));
    const steering = steerLimits(model(), travels, budget.share(1));
    return { answer: { steering, heights }, isCut: budget.cut };
  },
  asBuilt({ model, question: { isAligned }, budget }) {
    const answer = asBuiltReport(model(), "", budget, isAligned);
    return { answer, isCut: answer?.cutShort === true };
  },
  envelope({ model, question, budget, onProgress }) {
    const answer = drawnEnvelopeOf(model(), question, budget, onProgress);
    return { answer, isCut: answer === null };
  },
  section({ model, question, given, budget }) {
    const answer = drawnSectionOf(model(), given?.sides ?? [], question, budget);
    return { answer, isCut: budget.cut };
  },
  // A fraction of a second: never cut short.
  drawings({ model, question }) {
    const { setup } = model();
    return { answer: shopDrawings(setup, question, "setup"), isCut: false };
  },
  knuckleView: ({ model }) => ({ answer: knuckleViewOf(model().setup), isCut: false }),
  window({ model, question: { document, field }, budget }) {
    const found = windowOf(truckToVary(model(), document), field, { budget });
    if (!found.ok) throw new Error(found.issues[0]!.mend);
    return { answer: found.value, isCut: found.value.cutShort === true };
  },
  solve({ model, question: { document, field, target, from, to, looksOn }, budget, onProgress }) {
    const options = { from, to, budget, onProgress, looksOn, tellsAlso: true };
    const found = solveOf(truckToVary(model(), document), field, target, options);
    if (!found.ok) throw new Error(found.issues[0]!.mend);
    return { answer: found.value, isCut: found.value.cutShort === true };
  },
  chart({ model, question, budget }) {
    return chartPieceOf(model(), question, budget);
  },
  change({ model, question: { document, order }, budget }) {
    const answer = changeOf(truckToVary(model(), document), model(), { order, budget });
    return { answer, isCut: answer.cutShort === true };
  },
  odds({ model, question: { document, shares }, budget, onProgress }) {
    const truck = truckToVary(model(), document);
    const answer = shares === undefined ? oddsOf(truck, { budget, onProgress }) : oddsTogether(truck, shares);
    return { answer, isCut: answer.cutShort === true };
  },
  oddsShare({ model, question: { document, at, of }, budget, onProgress }) {
    const answer = oddsShare(truckToVary(model(), document), { at, of }, { budget, onProgress });
    return { answer, isCut: budget.cut };
  },
  loads({ model, question, budget }) {
    const answer = loadsAnswerOf(model(), question, budget);
    return { answer, isCut: budget.cut };
  },
  report({ model, question, budget, onProgress }) {
    const content =
      question.of === "shape"
        ? shapeBytes(model(), question, budget, onProgress)
        : reportText(model(), question, budget);
    return { answer: { content }, isCut: budget.cut };
  },
  mesh: ({ question: { name, bytes } }) => ({
    answer: readMesh(new Uint8Array(bytes), name),
    isCut: false,
  }),
};
