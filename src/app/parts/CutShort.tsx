import "./cutShort.css";
import { useEffect, useState } from "react";
import { cutShortSentence, longerEnded, longerWords } from "../../studies/wording/answerWords.ts";
import type { Answered } from "../work/answerCache.ts";
import type { JobName } from "../work/jobs.ts";
import { work } from "../work/work.ts";

export type CutShortProps = {
  study: Parameters<typeof cutShortSentence>[0];
  /** Answers shown together; those that were not cut short are passed over. */
  of: readonly Answered<JobName>[];
};

/** ms between two looks at the clock. */
const TICK = 200;

/**
 * Where the time given ended a search: says so, and that it goes on by itself, to be stopped; or has it search longer. Nothing
 * where all was finished.
 */
export function CutShort({ study, of }: CutShortProps) {
  const cut = of.filter(({ isCut }) => isCut);
  const longer = cut.filter(({ underWay }) => underWay !== null);
  if (cut.length === 0) return null;
  const failure = cut.find((one) => one.failure !== null)?.failure;
  return (
    <div className="cut-short">
      {longer.length > 0 ? (
        <Longer study={study} of={longer} />
      ) : (
        <>
          <p>{cutShortSentence(study)}</p>
          <button
            type="button"
            className="button"
            onClick={() => {
              for (const one of cut) work.searchLonger(one);
            }}
          >
            Search longer
          </button>
        </>
      )}
      {failure && <p role="alert">{longerEnded(failure)}</p>}
    </div>
  );
}

/** How far a longer search is, by its own word or by the time allowed. */
function Longer({ study, of }: CutShortProps) {
  const [now, setNow] = useState(() => performance.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(performance.now()), TICK);
    return () => clearInterval(timer);
  }, []);
  const shares = of.map(({ underWay }) => {
    if (underWay === null || underWay.since === null) return 0;
    return underWay.share ?? Math.min(1, (now - underWay.since) / (1000 * underWay.seconds));
  });
  const words = longerWords(study, Math.max(...of.map(({ underWay }) => underWay?.seconds ?? 0)));
  return (
    <>
      <p role="status">{words}</p>
      <progress
        aria-label={words}
        max={1}
        value={shares.reduce((sum, share) => sum + share, 0) / of.length}
      />
      <button
        type="button"
        className="button"
        onClick={() => {
          for (const one of of) work.cancel(one);
        }}
      >
        Stop
      </button>
    </>
  );
}
