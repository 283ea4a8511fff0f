import "./variantChoices.css";
import { counter } from "../../state/counterStore.ts";
import type { Comparison } from "./useComparison.ts";
import { VariantChoice } from "./VariantChoice.tsx";

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
