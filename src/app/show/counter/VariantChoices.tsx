import "./variantChoices.css";
import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import type { Fit } from "../../../studies/chart/readFits.ts";
import { truckName } from "../../../studies/wording/truckName.ts";
import { counter } from "../../state/counterStore.ts";
import { areWheelsAsked, wheelsShown } from "../../state/wheelsAsked.ts";
import { workbench } from "../../state/workbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { ShopWheels } from "../shop/ShopWheels.tsx";
import { fitName, putFitOn, trucksToTry, useShopWheels, withoutFit } from "../shop/shopWheels.ts";
import type { Comparison } from "./useComparison.ts";

export type VariantChoicesProps = {
  comparison: Comparison;
  /** The shop's list stands open below. Default it opens where it is asked for. */
  isListOpen?: boolean;
};

type Letter = "A" | "B";

/** That the list is open, for which of the two, and whether a wheel is to be added to it. */
type Asked = { readonly letter: Letter; readonly isToAdd: boolean };

/** The two trucks compared, chosen: the setup or a variant of it, on its own wheel and tire or on one the shop has. */
export function VariantChoices({ comparison, isListOpen = false }: VariantChoicesProps) {
  const { names, chosen, first, second } = comparison;
  const truck = (first ?? second)?.truck ?? null;
  const { text, read } = useShopWheels(truck);
  const [asked, setAsked] = useState<Asked | null>(() =>
    areWheelsAsked() ? { letter: "B", isToAdd: true } : null,
  );
  useEffect(wheelsShown, []);
  const selects = useRef<HTMLDivElement>(null);
  const fits = read?.ok ? read.value : [];
  const [a, b] = chosen;
  const chosenOf = (letter: Letter) => (letter === "A" ? a : b);
  const choose = (letter: Letter, variant: string | null) =>
    counter.setState(
      letter === "A"
        ? { first: variant, second: b, hubFace: null }
        : { first: a, second: variant, hubFace: null },
    );
  const put = (letter: Letter, base: string | null, fit: Fit) => {
    const variant = putFitOn(workbench, base, fit);
    if (variant !== null) choose(letter, variant);
  };
  const letter = asked?.letter ?? "B";
  const close = () => {
    selects.current?.querySelectorAll("select")[letter === "A" ? 0 : 1]?.focus();
    setAsked(null);
  };
  return (
    <>
      <div className="counter-choices" ref={selects}>
        {(["A", "B"] as const).map((one) => (
          <VariantChoice
            key={one}
            letter={one}
            drawn={one === "A" ? "solid" : "dashed"}
            names={names}
            chosen={chosenOf(one)}
            wheels={fits.map(({ name }) => name)}
            made={fits.map((fit) => names.includes(fitName(withoutFit(chosenOf(one), fits, names), fit)))}
            addWheel={
              read && !read.ok
                ? "The shop's list cannot be read: see it…"
                : text === ""
                  ? "Add a wheel the shop has…"
                  : "Add another…"
            }
            onChoose={(variant) => choose(one, variant)}
            onWheel={(at) => put(one, withoutFit(chosenOf(one), fits, names), fits[at]!)}
            onAdd={() => setAsked({ letter: one, isToAdd: true })}
          />
        ))}
        {!isListOpen && (
          <button
            type="button"
            className="button counter-wheels"
            aria-expanded={asked !== null}
            onClick={() => setAsked(asked === null ? { letter: "B", isToAdd: text === "" } : null)}
          >
            Other wheels…
          </button>
        )}
      </div>
      {(asked !== null || isListOpen) && (
        <ShopWheels
          truck={truck}
          triedOn={trucksToTry(chosen, letter, fits, names)}
          asked={asked?.isToAdd ? asked : null}
          // The list stays where it is: often several are put on, one after the other.
          onPut={({ letter: one, base }, fit) => put(one, base, fit)}
          onClose={isListOpen ? undefined : close}
        />
      )}
    </>
  );
}

type VariantChoiceProps = {
  letter: Letter;
  /** How it is drawn. */
  drawn: string;
  names: readonly string[];
  chosen: string | null;
  /** Names of those the shop has, and what leads to where one more is added. */
  wheels: readonly string[];
  /** Of each whether it is a variant already on what is chosen, which stands among those. */
  made: readonly boolean[];
  addWheel: string;
  onChoose: (variant: string | null) => void;
  onWheel: (at: number) => void;
  onAdd: () => void;
};

/** Before the place of a wheel, as an option's value. */
const WHEEL = "wheel ";

/** Keys that would choose from the list while it is closed; the space bar opens it by itself. */
const CHOOSING = /^(?:Arrow(?:Up|Down|Left|Right)|Home|End|Page(?:Up|Down)|[^ ])$/u;

/**
 * Opens the list by a key that would choose from it while it is closed: passing over a wheel would make a variant, and each
 * key another answer. What is chosen is chosen in the open list.
 */
function openByKey(event: KeyboardEvent<HTMLSelectElement>): void {
  if (!CHOOSING.test(event.key) || event.altKey || event.ctrlKey || event.metaKey) return;
  try {
    if (isOpen(event.currentTarget)) return;
    event.currentTarget.showPicker();
    event.preventDefault();
  } catch {
    // A browser that cannot open it by itself does with the key what it always does.
  }
}

/** Whether a list stands open; of a browser that does not tell, no: it keeps the keys of an open list to itself. */
function isOpen(select: HTMLSelectElement): boolean {
  try {
    return select.matches(":open");
  } catch {
    return false;
  }
}

/** Chooses one of the two trucks compared: the setup itself, a variant of it, or what is chosen on another wheel. */
function VariantChoice(props: VariantChoiceProps) {
  const { letter, drawn, names, chosen, wheels, made, addWheel, onChoose, onWheel, onAdd } = props;
  return (
    <label className="counter-choice">
      <span className={`counter-letter counter-letter-${letter}`} aria-hidden="true">
        {letter}
      </span>
      <span className="sr-only">
        {letter}, drawn {drawn}
      </span>
      <span className="counter-choice-box">
        {/* A list's own face cuts a long name: what is chosen is written over it. */}
        <span className="counter-choice-name" aria-hidden="true">
          {keepTogether(truckName(chosen))}
        </span>
        {/* A position as value: a variant may be called anything. */}
        <select
          value={chosen === null ? -1 : names.indexOf(chosen)}
          onKeyDown={openByKey}
          onChange={({ target: { value } }) => {
            if (value === WHEEL) onAdd();
            else if (value.startsWith(WHEEL)) onWheel(Number(value.slice(WHEEL.length)));
            else onChoose(names[Number(value)] ?? null);
          }}
        >
          <option value={-1}>{truckName(null)}</option>
          {names.map((name, i) => (
            <option key={name} value={i}>
              {name}
            </option>
          ))}
          <optgroup label="On another wheel and tire">
            {wheels.map((name, i) =>
              made[i] ? null : (
                // biome-ignore lint/suspicious/noArrayIndexKey: two lines may be called the same
                <option key={i} value={`${WHEEL}${i}`}>
                  {name}
                </option>
              ),
            )}
            <option value={WHEEL}>{addWheel}</option>
          </optgroup>
        </select>
      </span>
    </label>
  );
}
