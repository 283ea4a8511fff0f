import type { Setup } from "../../../setup/types/types.ts";
import { type Fit, fitBlocks } from "../../../studies/chart/readFits.ts";
import { wheelOffsetText, wheelText } from "../../../studies/wording/sheetRows.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { ListedAnswer } from "./ListedAnswer.tsx";

export type ListedWheelsProps = {
  fits: readonly Fit[];
  /** The truck that they are told for: what a line leaves out is its own. */
  setup: Setup;
  /** The truck they are tried on: a variant, null = the setup as it stands. */
  base: string | null;
  /** On which of the two they are put. */
  letter: "A" | "B";
  /** Whether that is the truck with this wheel already. */
  isOn: (fit: Fit) => boolean;
  onPut: (fit: Fit) => void;
  onRemove: (at: number) => void;
};

/** The wheels of the shop's list, each with what it comes to, to be put on a truck or taken off the list. */
export function ListedWheels({ fits, setup, base, letter, isOn, onPut, onRemove }: ListedWheelsProps) {
  const format = useFormat();
  return (
    <ul className="listed-wheels">
      {fits.map((fit, at) => {
        const blocks = fitBlocks(fit, setup);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: two lines may be called the same
          <li key={at}>
            <span className="listed-wheel">
              {fit.name !== wheelText(blocks, format) && <strong>{fit.name}</strong>}
              <span>{keepTogether(wheelOffsetText(blocks, format))}</span>
            </span>
            <ListedAnswer fit={fit} base={base} />
            <span className="listed-wheel-tools">
              {/* One button, which keeps the focus and its place when the wheel is on. */}
              <button
                type="button"
                className="button"
                aria-disabled={isOn(fit)}
                onClick={() => {
                  if (!isOn(fit)) onPut(fit);
                }}
              >
                {isOn(fit) ? "On" : "Put on"} {letter}
                <span className="sr-only">: {fit.name}</span>
              </button>
              <button type="button" className="button" onClick={() => onRemove(at)}>
                Remove<span className="sr-only"> {fit.name} from the list</span>
              </button>
            </span>
          </li>
        );
      })}
    </ul>
  );
}
