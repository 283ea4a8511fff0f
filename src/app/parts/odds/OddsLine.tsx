import "./oddsLine.css";
import { againSentence, LIKELY_SIGN, oddsSentence } from "../../../studies/wording/oddsWords.ts";
import type { Truck } from "../../state/truck.ts";
import { keepTogether } from "../../words/keepTogether.ts";
import { tellsWithin, useOdds } from "./useOdds.ts";

export type OddsLineProps = {
  truck: Truck;
  /** What the truck is called, where there are two. */
  letter: string;
};

/** The odds of a truck in a sentence or two, under their own sign; nothing where no number tells how well it is known. */
export function OddsLine({ truck, letter }: OddsLineProps) {
  return tellsWithin(truck) ? <Line truck={truck} letter={letter} /> : null;
}

function Line({ truck, letter }: OddsLineProps) {
  const { answered, speech } = useOdds(truck);
  const report = answered?.answer ?? null;
  if (answered?.failure != null) return <p>The odds could not be worked out: {answered.failure}</p>;
  const again = report && againSentence(report, speech);
  return (
    <p className="odds-line">
      <span className="odds-sign" aria-hidden="true">
        {LIKELY_SIGN}
      </span>{" "}
      {letter} · {report ? keepTogether(oddsSentence(report)) : "Working out how likely that is…"}
      {again !== null && ` ${keepTogether(again)}`}
    </p>
  );
}
