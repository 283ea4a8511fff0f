import { chartCells } from "../../studies/chart/chartCells.ts";
import type { CellDocument } from "../../studies/chart/chartDocument.ts";
import { chartSearch } from "../../studies/chart/chartSearch.ts";
import type { ChartAsk } from "../../studies/chart/chartTypes.ts";
import type { Budget } from "../../studies/numeric/budget.ts";
import { type OddsOptions, type OddsShare, oddsShare } from "../../studies/odds/oddsOf.ts";
import type { TruckToVary } from "../../studies/window/truckOverField.ts";

/** Every `of`-th of a job's pieces, from the `at`-th on. */
export interface Share {
  readonly at: number;
  readonly of: number;
}

/** What is shared out, and what each share answers: plain data. */
export interface SharedJobs {
  readonly odds: {
    readonly ask: {
      readonly subject: TruckToVary;
      readonly options: Omit<OddsOptions, "budget" | "onProgress">;
    };
    readonly answer: OddsShare;
  };
  /** Cells by number, row by row. */
  readonly chart: {
    readonly ask: { readonly subject: TruckToVary; readonly ask: ChartAsk };
    readonly answer: ReadonlyMap<number, CellDocument>;
  };
}

export type SharedJob = keyof SharedJobs;
export type SharedAsk<J extends SharedJob> = SharedJobs[J]["ask"];
export type SharedAnswer<J extends SharedJob> = SharedJobs[J]["answer"];

/** What a share may spend, and where it tells how much of it is done, 0 … 1. */
export interface ShareRun {
  readonly share: Share;
  readonly budget: Budget;
  readonly onProgress: (done: number) => void;
}

/** A share of each job, as one thread does it: no answer depends on how many there are. */
export const SHARED_JOBS: {
  readonly [J in SharedJob]: (ask: SharedAsk<J>, run: ShareRun) => SharedAnswer<J>;
} = {
  odds: ({ subject, options }, { share, budget, onProgress }) =>
    oddsShare(subject, share, { ...options, budget, onProgress }),
  chart({ subject, ask }, { share, budget, onProgress }) {
    const made = chartSearch(subject, ask);
    if (!made.ok) throw new TypeError(made.issues[0]!.mend);
    return chartCells(made.value, share, subject.setup.units, budget, onProgress);
  },
};
