import "./variantChoices.css";
import { truckName } from "../../../studies/wording/truckName.ts";
import { counter } from "../../state/counterStore.ts";
import type { Comparison } from "./useComparison.ts";

export type VariantChoicesProps = {
  comparison: Comparison;
};

/** The two trucks compared, chosen. */
export function VariantChoices({ comparison }: VariantChoicesProps) {
  const { names, chosen } = comparison;
  const [first, second] = chosen;
  return (
    <div className="counter-choices">
      <VariantChoice
        letter={"A"}
        drawn={"solid"}
        names={names}
        chosen={first}
        onChoose={(variant) => counter.setState({ first: variant, second, hubFace: null })}
      />
      <VariantChoice
        letter={"B"}
        drawn={"dashed"}
        names={names}
        chosen={second}
        onChoose={(variant) => counter.setState({ first, second: variant, hubFace: null })}
      />
    </div>
  );
}

type VariantChoiceProps = {
  letter: "A" | "B";
  /** How it is drawn. */
  drawn: string;
  names: readonly string[];
  chosen: string | null;
  onChoose: (variant: string | null) => void;
};

/** Chooses one of the two trucks compared: the setup itself, or a variant of it. */
function VariantChoice({ letter, drawn, names, chosen, onChoose }: VariantChoiceProps) {
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
        onChange={(event) => onChoose(names[Number(event.target.value)] ?? null)}
      >
        <option value={-1}>{truckName(null)}</option>
        {names.map((name, i) => (
          <option key={name} value={i}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
