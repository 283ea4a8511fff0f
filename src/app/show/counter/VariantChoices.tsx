import "./variantChoices.css";
import type { KeyboardEvent } from "react";
import { truckName } from "../../../studies/wording/truckName.ts";
import { openLayer } from "../../parts/layer.ts";
import { counter } from "../../state/counterStore.ts";
import { workbench } from "../../state/workbench.ts";
import { putFitOn, useShopWheels, withoutFit } from "../shop/shopWheels.ts";
import type { Comparison } from "./useComparison.ts";

export type VariantChoicesProps = {
  comparison: Comparison;
};

/** The two trucks compared, chosen: the setup or a variant of it, on its own wheel and tire or on one the shop has. */
export function VariantChoices({ comparison }: VariantChoicesProps) {
  const { names, chosen, first, second } = comparison;
  const { text, read } = useShopWheels((first ?? second)?.truck ?? null);
  const fits = read?.ok ? read.value : [];
  const [a, b] = chosen;
  const choose = (letter: "A" | "B", variant: string | null) =>
    counter.setState(
      letter === "A"
        ? { first: variant, second: b, hubFace: null }
        : { first: a, second: variant, hubFace: null },
    );
  return (
    <div className="counter-choices">
      {(["A", "B"] as const).map((letter, i) => (
        <VariantChoice
          key={letter}
          letter={letter}
          drawn={letter === "A" ? "solid" : "dashed"}
          names={names}
          chosen={chosen[i]!}
          wheels={fits.map(({ name }) => name)}
          noWheels={
            text === "" ? "Open the shop's list of wheels…" : "The shop's list cannot be read: see it…"
          }
          onChoose={(variant) => choose(letter, variant)}
          onWheel={(at) => {
            const put = putFitOn(workbench, withoutFit(chosen[i]!, fits, names), fits[at]!);
            if (put !== null) choose(letter, put);
          }}
        />
      ))}
    </div>
  );
}

type VariantChoiceProps = {
  letter: "A" | "B";
  /** How it is drawn. */
  drawn: string;
  names: readonly string[];
  chosen: string | null;
  /** Names of those the shop has; empty = none, and `noWheels` leads to where they are kept. */
  wheels: readonly string[];
  noWheels: string;
  onChoose: (variant: string | null) => void;
  onWheel: (at: number) => void;
};

/** Before the place of a wheel, as an option's value. */
const WHEEL = "wheel ";

/** Opens the list by an arrow, which may choose from it while it is closed: passing over a wheel would make a variant. */
function openByArrow(event: KeyboardEvent<HTMLSelectElement>): void {
  if (!event.key.startsWith("Arrow") || event.altKey || event.ctrlKey || event.metaKey) return;
  try {
    event.currentTarget.showPicker();
    event.preventDefault();
  } catch {
    // A browser that cannot open it by itself does with the arrow what it always does.
  }
}

/** Chooses one of the two trucks compared: the setup itself, a variant of it, or what is chosen on another wheel. */
function VariantChoice(props: VariantChoiceProps) {
  const { letter, drawn, names, chosen, wheels, noWheels, onChoose, onWheel } = props;
  return (
    <label className="counter-choice">
      <span className={`counter-letter counter-letter-${letter}`} aria-hidden="true">
        {letter}
      </span>
      <span className="sr-only">
        {letter}, drawn {drawn}
      </span>
      {/* A position as value: a variant may be called anything. */}
      <select
        value={chosen === null ? -1 : names.indexOf(chosen)}
        onKeyDown={openByArrow}
        onChange={({ target: { value } }) => {
          if (value === WHEEL) openLayer("sheet");
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
          {wheels.length === 0 && <option value={WHEEL}>{noWheels}</option>}
          {wheels.map((name, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two lines may be called the same
            <option key={i} value={`${WHEEL}${i}`}>
              {name}
            </option>
          ))}
        </optgroup>
      </select>
    </label>
  );
}
