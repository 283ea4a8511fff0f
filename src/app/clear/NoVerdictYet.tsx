import type { Progress } from "../../setup/worksheet/worksheetState.ts";
import { noVerdictYet } from "../../studies/wording/worksheetWords.ts";
import { worksheetView } from "../measure/worksheet/worksheetView.ts";
import { goToStation, useStation } from "../state/address.ts";

export type NoVerdictYetProps = {
  progress: Progress;
};

/** In place of the answer while too little of a truck is read: how much more it takes, and the way there. */
export function NoVerdictYet({ progress }: NoVerdictYetProps) {
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
