import { type ReactNode, useId } from "react";
import type { SavedFile } from "../../parts/useSaving.ts";

export type SaveGroupProps = {
  title: string;
  files: readonly SavedFile[];
  onSave: (file: SavedFile) => void;
  /** What stands above the files: what holds for all of them, what can be chosen. */
  children?: ReactNode;
};

/** Files of one kind, each with its name and a button. */
export function SaveGroup({ title, files, onSave, children }: SaveGroupProps) {
  const id = useId();
  return (
    <section className="saves-group" aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      {children}
      <ul>
        {files.map((one) => (
          <li key={one.file}>
            <span>
              {one.name} <small>{one.file}</small>
            </span>
            <button
              type="button"
              className="button"
              aria-label={`Save ${one.name}, ${one.file}`}
              onClick={() => onSave(one)}
            >
              Save
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
