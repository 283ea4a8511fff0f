import { answerHeadline } from "../../../studies/wording/answerWords.ts";
import { StateMark } from "../../parts/StateMark.tsx";

/** Says on what is closed that something unusual is inside. */
export function UnusualTag() {
  return (
    <span className="group-unusual">
      <StateMark word="unusual" /> {answerHeadline("unusual", { fromExample: null }).toLowerCase()}
    </span>
  );
}
