import { useEffect, useRef } from "react";
import type { Setup } from "../../../setup/types/types.ts";
import { type Fit, fitBlocks } from "../../../studies/chart/readFits.ts";
import { wheelOffsetText, wheelText } from "../../../studies/wording/sheetRows.ts";
import { truckName } from "../../../studies/wording/truckName.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { ListedAnswer } from "./ListedAnswer.tsx";
import { fitName, type TriedOn } from "./shopWheels.ts";

export type ListedWheelsProps = {
  fits: readonly Fit[];
  /** The truck that they are told for: what a line leaves out is its own. */
  setup: Setup;
  /** One or both of the two compared. */
  triedOn: readonly TriedOn[];
  /** What was added last comes in sight; null = nothing was. */
  added: { readonly name: string } | null;
  onPut: (on: TriedOn, fit: Fit) => void;
  onRemove: (at: number) => void;
};

/** The wheels of the shop's list, each with what it comes to on both trucks, to be put on one or taken off the list. */
export function ListedWheels({ fits, setup, triedOn, added, onPut, onRemove }: ListedWheelsProps) {
  const format = useFormat();
  const list = useRef<HTMLUListElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once each time one is added, not as others go
  useEffect(() => {
    const at = added === null ? -1 : fits.findLastIndex(({ name }) => name === added.name);
    list.current?.children[at]?.scrollIntoView({ block: "nearest" });
  }, [added]);
  return (
    <ul ref={list} className="listed-wheels">
      {fits.map((fit, place) => {
        const blocks = fitBlocks(fit, setup);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: two lines may be called the same
          <li key={place}>
            <span className="listed-wheel">
              {fit.name !== wheelText(blocks, format) && <strong>{fit.name}</strong>}
              <span>{keepTogether(wheelOffsetText(blocks, format))}</span>
            </span>
            <button type="button" className="button listed-remove" onClick={() => onRemove(place)}>
              Remove<span className="sr-only"> {fit.name} from the list</span>
            </button>
            <ul className="listed-on">
              {triedOn.map((on) => (
                <ListedOn key={on.letter} on={on} fit={fit} onPut={onPut} />
              ))}
            </ul>
          </li>
        );
      })}
    </ul>
  );
}

type ListedOnProps = Pick<ListedWheelsProps, "onPut"> & {
  on: TriedOn;
  fit: Fit;
};

/** What one of the trucks comes to with a wheel, and the way to show it with that. */
function ListedOn({ on, fit, onPut }: ListedOnProps) {
  const { letter, base, chosen } = on;
  const isOn = chosen === fitName(base, fit);
  return (
    <li>
      <span className={`counter-letter counter-letter-${letter}`} aria-hidden="true">
        {letter}
      </span>
      <span className="listed-told">
        <span className="listed-base">{keepTogether(truckName(base))}</span>
        <span className="sr-only">: </span>
        <ListedAnswer fit={fit} base={base} />
      </span>
      {/* One button, which keeps the focus and its place when the wheel is on. */}
      <button
        type="button"
        className="button"
        aria-disabled={isOn}
        onClick={() => {
          if (!isOn) onPut(on, fit);
        }}
      >
        {isOn ? "On" : "Put on"} {letter}
        <span className="sr-only">: {fit.name}</span>
      </button>
    </li>
  );
}
