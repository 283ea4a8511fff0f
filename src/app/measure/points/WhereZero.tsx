import { useId, useState } from "react";
import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import { type Zero, zeroOf } from "../../../setup/fields/zeroOf.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { ZERO_WORDS, ZeroSketch } from "../sketches/zeroSketches.tsx";

/** What a point is counted from; null = it is none. */
export function useZero(path: KeyPath): Zero | null {
  return useWorkbench((s) => {
    const document = shownDocument(s);
    const field = path.length === 0 ? null : fieldAt(path, document);
    return field && zeroOf(field, path, document);
  });
}

export type WhereZeroProps = {
  zero: Zero;
};

/** Where a point's numbers are counted from, on demand. */
export function WhereZero({ zero }: WhereZeroProps) {
  const id = useId();
  const [isOpen, setOpen] = useState(false);
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
