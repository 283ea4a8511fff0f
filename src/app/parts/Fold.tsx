import "./fold.css";
import { type ReactNode, useState } from "react";
import { bringInSight } from "./bringInSight.ts";

export type FoldProps = {
  /** Names the fold in the browser's memory; not shown. */
  id: string;
  title: string;
  /** What matters most of it, read while it is folded. Default nothing. */
  note?: ReactNode;
  /** Whether it is open for somebody who has not said. Default false. */
  isOpen?: boolean;
  children: ReactNode;
};

const KEY = "wellsweep fold ";

/** A group of answers that can be folded away; which are folded is remembered. What is folded is not worked out. */
export function Fold({ id, title, note, isOpen = false, children }: FoldProps) {
  const [open, setOpen] = useState(() => remembered(id) ?? isOpen);
  return (
    <details
      className="fold"
      data-fold={id}
      open={open}
      onToggle={(event) => {
        const now = event.currentTarget.open;
        if (now === open) return;
        setOpen(now);
        remember(id, now);
        if (now) bringInSight(event.currentTarget);
      }}
    >
      <summary>
        <h2 className="label">{title}</h2>
        {note !== undefined && <span className="fold-note">{note}</span>}
      </summary>
      {open && <div className="fold-inside">{children}</div>}
    </details>
  );
}

/** A browser may keep nothing for a page; then every visit begins as the first. */
function remembered(id: string): boolean | null {
  try {
    const kept = localStorage.getItem(KEY + id);
    return kept === null ? null : kept === "open";
  } catch {
    return null;
  }
}

function remember(id: string, isOpen: boolean): void {
  try {
    localStorage.setItem(KEY + id, isOpen ? "open" : "folded");
  } catch {
    // Nothing is kept, and nothing is lost but the fold.
  }
}
