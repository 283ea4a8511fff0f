import "./saveMenu.css";
import { useEffect } from "react";
import { Menu } from "./Menu.tsx";
import { type SavedFile, useSaving } from "./useSaving.ts";

export type SaveMenuProps = {
  /** What is saved, for who cannot see the panel it stands in: `the map`. */
  of: string;
  files: readonly SavedFile[];
  /** Its sheet stands under the left end of the button: where there is no room to the left of it. Default true. */
  isLeft?: boolean;
  /** As of `Menu`. */
  waits?: string | null;
};

/** ms for which it is told that a file is saved. */
const TOLD_FOR = 8000;

/** Everything of a panel that can be saved as a file. What is told of one stands where the menu stood: nothing moves for it. */
export function SaveMenu({ of, files, isLeft = true, waits = null }: SaveMenuProps) {
  const { told, save, putAway } = useSaving();
  const isOver = told !== null && !told.isBusy;
  useEffect(() => {
    if (!isOver) return;
    const timer = setTimeout(putAway, TOLD_FOR);
    return () => clearTimeout(timer);
  });
  return (
    <span className="save-menu">
      <Menu label={`Save ${of}…`} icon="Save…" isLeft={isLeft} waits={waits}>
        {(close) =>
          files.map((one) => (
            <button
              key={one.name}
              type="button"
              className="menu-item"
              onClick={() => {
                close();
                void save(one);
              }}
            >
              {one.name} <small>{one.file}</small>
            </button>
          ))
        }
      </Menu>
      <span role="status" className="sr-only">
        {told?.text}
      </span>
      <span
        className={isLeft ? "menu-sheet menu-sheet-left save-menu-told" : "menu-sheet save-menu-told"}
        hidden={told === null}
      >
        <span aria-hidden="true">{told?.text}</span>
        {told?.isBusy && <progress aria-label={told.text} max={1} value={told.share ?? undefined} />}
        <button type="button" className="button" onClick={putAway}>
          {told?.isBusy ? "Cancel" : "Close"}
        </button>
      </span>
    </span>
  );
}
