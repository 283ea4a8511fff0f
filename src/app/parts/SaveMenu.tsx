import "./saveMenu.css";
import { useRef, useState } from "react";
import { Menu } from "./Menu.tsx";
import { saveAs } from "./saveAs.ts";

/** One file that can be saved of a panel. */
export interface SavedFile {
  /** What it is, as the menu says it: `JSON, as the command line prints it`. */
  readonly name: string;
  readonly file: string;
  readonly type: string;
  /** What it holds; long ones are worked out beside the page, tell how far they are, and are given up by the signal. */
  readonly make: (signal: AbortSignal, onShare: (share: number) => void) => BlobPart | Promise<BlobPart>;
}

export type SaveMenuProps = {
  /** What is saved, for who cannot see the panel it stands in: `the map`. */
  of: string;
  files: readonly SavedFile[];
  /** Its sheet stands under the left end of the button: where there is no room to the left of it. Default true. */
  isLeft?: boolean;
};

/** Everything of a panel that can be saved as a file. */
export function SaveMenu({ of, files, isLeft = true }: SaveMenuProps) {
  const underWay = useRef<AbortController | null>(null);
  const [told, setTold] = useState<{ readonly text: string; readonly isBusy: boolean } | null>(null);
  const [share, setShare] = useState<number | null>(null);
  const save = async ({ name, file, type, make }: SavedFile) => {
    underWay.current?.abort();
    const giveUp = new AbortController();
    underWay.current = giveUp;
    setShare(null);
    setTold({ text: `Making ${name}…`, isBusy: true });
    try {
      saveAs(file, type, await make(giveUp.signal, setShare));
      setTold(null);
    } catch (fault) {
      if (giveUp.signal.aborted) return;
      setTold({
        text: `Not saved: ${fault instanceof Error ? fault.message : String(fault)}`,
        isBusy: false,
      });
    }
  };
  return (
    <span className="save-menu">
      <Menu label={`Save ${of}…`} icon="Save…" isLeft={isLeft}>
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
      <span role="status" className="save-menu-told">
        {told?.text}
      </span>
      {told?.isBusy && share !== null && <progress aria-label={told.text} max={1} value={share} />}
      {told?.isBusy && (
        <button
          type="button"
          className="button"
          onClick={() => {
            underWay.current?.abort();
            setTold(null);
          }}
        >
          Cancel
        </button>
      )}
    </span>
  );
}
