import type { Setup } from "../../setup/types.ts";
import type { GapEntry } from "../../studies/gapsAt.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { isSamePart } from "../state/viewActions.ts";
import { amountText } from "../words/amountText.ts";
import { gapWord } from "../words/gapWord.ts";
import { StateMark } from "./StateMark.tsx";

export type GapRowProps = {
  entry: GapEntry;
  setup: Setup;
};

const WORDS = { rubs: "rubs by", close: "close", clear: "clear" } as const;

/** One part on one side; pressing it points the place out on the stage. */
export function GapRow({ entry, setup }: GapRowProps) {
  const isSelected = useWorkbench((s) => isSamePart(entry, s.selection));
  const select = useWorkbench((s) => s.select);
  const word = gapWord(entry.gap, setup.allowance);
  return (
    <li>
      <button
        type="button"
        className={`gap-row gap-${word}`}
        aria-pressed={isSelected}
        onClick={() => select({ part: entry.part, side: entry.side })}
      >
        <StateMark word={word} />
        <span className="gap-part">
          {entry.part} <span className="gap-side">{entry.side}</span>
        </span>
        <span className="gap-word">{WORDS[word]}</span>
        <span className="gap-amount">{amountText(entry.gap, setup, true)}</span>
      </button>
    </li>
  );
}
