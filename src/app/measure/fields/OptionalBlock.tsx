import type { ReactNode } from "react";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";

export type OptionalBlockProps = {
  path: KeyPath;
  title: string;
  /** What it is good for, and what holds without it. */
  note: string;
  /** What it starts as, as the file holds it. */
  start: () => unknown;
  /** Default "Add". */
  add?: string;
  children: ReactNode;
};

/** A block that a setup may have: a button that adds it, or its fields and a button that removes it. */
export function OptionalBlock({ path, title, note, start, add = "Add", children }: OptionalBlockProps) {
  const isThere = useWorkbench((s) => valueAt(shownDocument(s), path) !== undefined);
  const { applySuggestion, removeField } = workbench.getState();
  // Written as it is: what a new block still lacks is told at its fields, and the truck from before stays until then.
  const write = () => applySuggestion({ path, value: start(), kind: "nearest" });
  return (
    <section className="part-block" data-field={path.join(".")}>
      <h4>{title}</h4>
      <p className="part-note">{note}</p>
      {isThere && children}
      <button type="button" className="small-button" onClick={() => (isThere ? removeField(path) : write())}>
        {isThere ? "Remove" : add} {title.charAt(0).toLowerCase() + title.slice(1)}
      </button>
    </section>
  );
}
