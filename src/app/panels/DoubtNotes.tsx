import "./doubtNotes.css";
import type { Doubt } from "../../studies/doubts/doubt.ts";
import { keepTogether } from "../words/keepTogether.ts";
import { StateMark } from "./StateMark.tsx";

export type DoubtNotesProps = {
  doubts: readonly Doubt[];
};

/** What is in doubt, beside an answer: each with its mark. */
export function DoubtNotes({ doubts }: DoubtNotesProps) {
  if (doubts.length === 0) return null;
  return (
    <ul className="doubts" aria-label="To be looked at again">
      {doubts.map(({ kind, path, text }) => (
        <li key={`${kind} ${path.join(".")} ${text}`}>
          <StateMark word={kind} /> {keepTogether(text)}
        </li>
      ))}
    </ul>
  );
}
