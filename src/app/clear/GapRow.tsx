import type { Setup } from "../../setup/types/types.ts";
import { type PartRow, partMark } from "../../studies/wording/gapRows.ts";
import { amountWord, nowText } from "../../studies/wording/gapTexts.ts";
import { amountText } from "../../studies/wording/lengths.ts";
import { heightText, lockText } from "../../studies/wording/poseWords.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { StateMark } from "../parts/StateMark.tsx";
import { useWorkbench } from "../state/useWorkbench.ts";
import { keepTogether } from "../words/keyWords.ts";

export type GapRowProps = {
  row: PartRow;
  setup: Setup;
  format: LengthFormat;
  /** Too little is read for a verdict: it is no fact of the truck. */
  isAssumed: boolean;
};

/** One part: its worst gap and where that is, its gap now. Pressing it goes there and points the part out. */
export function GapRow({ row, setup, format, isAssumed }: GapRowProps) {
  const { part, now, worst, isAlike } = row;
  const isSelected = useWorkbench((s) => s.selection?.part === part);
  const setPose = useWorkbench((s) => s.setPose);
  const select = useWorkbench((s) => s.select);
  const mark = partMark(row, setup.allowance);
  if (mark === null) return null;
  const { word, isOpen, gap, side } = mark;
  const where =
    worst === null
      ? "at the pose shown"
      : worst.together
        ? "at every pose"
        : `${heightText(worst.travel, setup, format)}, ${lockText(worst.steer)}`;
  return (
    <li>
      <button
        type="button"
        className={`gap-row gap-${word}`}
        aria-pressed={isSelected}
        onClick={() => {
          if (worst !== null && !worst.together) setPose(worst.travel, worst.steer);
          if (!isSelected) select({ part, side });
        }}
      >
        <StateMark word={isAssumed ? "assumed" : word} />
        <span className="gap-part">
          {part} {!isAlike && <span className="gap-side">{side}</span>}
          <span className="gap-where">{where}</span>
        </span>
        <span className="gap-amount">
          <span className="gap-word">{amountWord(word, isOpen)}</span> {amountText(gap, format, true)}
        </span>
        <span className="gap-now">
          <span className="sr-only">now </span>
          {now === null ? "–" : keepTogether(nowText(now.gap, format))}
        </span>
      </button>
    </li>
  );
}
