import { useId, useState } from "react";
import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import { zeroOf } from "../../../setup/fields/zeroOf.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { ZERO_WORDS, ZeroSketch } from "../sketches/zeroSketches.tsx";

export type WhereZeroProps = {
  /** Of a point of the table. */
  path: KeyPath;
};

/** Where a point's numbers are counted from, on demand; nothing for what is no point. */
export function WhereZero({ path }: WhereZeroProps) {
  const id = useId();
  const [isOpen, setOpen] = useState(false);
  const zero = useWorkbench((s) => {
    const document = shownDocument(s);
    const field = fieldAt(path, document);
    return field && zeroOf(field, path, document);
  });
  if (zero === null) return null;
  return (
    <>
      <button
        type="button"
        className="small-button"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => setOpen(!isOpen)}
      >
        Where is zero?
      </button>
      <div id={id} className="where-zero" hidden={!isOpen}>
        {isOpen && (
          <>
            <ZeroSketch zero={zero} />
            <p>{ZERO_WORDS[zero]}</p>
          </>
        )}
      </div>
    </>
  );
}
