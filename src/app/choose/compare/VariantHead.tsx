import { useState } from "react";
import { truckName } from "../../../studies/wording/truckName.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

export type VariantHeadProps = {
  /** null = the setup as it stands, which can be neither renamed nor removed. */
  variant: string | null;
  isShown: boolean;
};

/** The head of a variant's column: shows it, renames it, removes it (undo brings it back). */
export function VariantHead({ variant, isShown }: VariantHeadProps) {
  const choose = useWorkbench((s) => s.chooseVariant);
  const rename = useWorkbench((s) => s.renameVariant);
  const remove = useWorkbench((s) => s.removeVariant);
  const [typed, setTyped] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const name = truckName(variant);

  if (typed !== null && variant !== null) {
    const keep = () => {
      const why = rename(variant, typed);
      setProblem(why);
      if (why === null) setTyped(null);
    };
    return (
      <th scope="col">
        <input
          aria-label={`New name of variant ${variant}`}
          aria-invalid={problem !== null}
          value={typed}
          // biome-ignore lint/a11y/noAutofocus: the field was asked for by pressing Rename
          autoFocus
          onChange={(event) => setTyped(event.target.value)}
          onBlur={keep}
          onKeyDown={(event) => {
            if (event.key === "Enter") keep();
            if (event.key === "Escape") setTyped(null);
          }}
        />
        {problem && <p role="alert">{problem}</p>}
      </th>
    );
  }
  return (
    <th scope="col">
      <button type="button" className="button" aria-pressed={isShown} onClick={() => choose(variant)}>
        {name}
      </button>
      {variant !== null && (
        <span className="variant-acts">
          <button type="button" aria-label={`Rename ${variant}`} onClick={() => setTyped(variant)}>
            rename
          </button>
          <button type="button" aria-label={`Remove ${variant}`} onClick={() => remove(variant)}>
            remove
          </button>
        </span>
      )}
    </th>
  );
}
