import "./heading.css";
import { useId, useRef, useState } from "react";
import { FIRST_PAGE, openDocs } from "../../docs/reader.ts";
import { LateBody, LateExtra } from "../../parts/late.tsx";
import { useCloses } from "../../parts/Menu.tsx";
import { useLayer } from "../../state/address.ts";
import { useCanRedo, useCanUndo } from "../../state/documentUse.ts";
import { isDirty } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { useStorage } from "../storage/pageStorage.ts";
import { FileButtons } from "./FileButtons.tsx";
import { Notices } from "./Notices.tsx";
import { Preferences } from "./Preferences.tsx";
import { StepsMenu } from "./StepsMenu.tsx";
import { VariantPicker } from "./VariantPicker.tsx";

// Nothing is undone before there is something to undo.
const UNDONE_NOTE = new LateBody(async () => (await import("../../parts/UndoneNote.tsx")).UndoneNote);

/** Like the title block of a drawing: the program, the setup on the board, which variant of it, and what to do with it. */
export function Heading({ truck }: { truck: Truck | null }) {
  const name = useWorkbench((s) => s.document?.name as string | undefined);
  const dirty = useWorkbench(isDirty);
  const isKept = useStorage((s) => s.status !== "off");
  // A layer tells it itself.
  const isCovered = useLayer() !== null;
  return (
    <>
      <header className="heading">
        <h1 className="heading-name">Wellsweep</h1>
        <p className="heading-setup">
          <span>{truck ? truck.setup.name : (name ?? "no setup yet")}</span>
          {/* Something always stands there: nothing moves at the first change. */}
          <span
            className="heading-dirty"
            title={dirty && isKept ? "kept in this browser, not yet saved to a file" : undefined}
          >
            {dirty && isKept && (
              <>
                kept<span className="heading-ample"> in this browser</span> ·{" "}
              </>
            )}
            {dirty ? "not saved to a file" : "no unsaved changes"}
          </span>
        </p>
        {truck && <VariantPicker />}
        <StepButtons />
        <Acts />
        <button
          type="button"
          className="button heading-help"
          onClick={() => openDocs({ page: FIRST_PAGE, anchor: null })}
        >
          Help
        </button>
        {!isCovered && <LateExtra of={UNDONE_NOTE} props={{}} about={truck} />}
      </header>
      <Notices />
    </>
  );
}

/** What is done with a setup as a whole. In a narrow window it stands behind a button of its own. */
function Acts() {
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const more = useRef<HTMLButtonElement>(null);
  const close = () => {
    setOpen(false);
    return more.current;
  };
  useCloses(isOpen, box, close);
  return (
    <div ref={box} className="heading-menu">
      <button
        ref={more}
        type="button"
        className="button heading-more"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => setOpen(!isOpen)}
      >
        Menu
      </button>
      {/* biome-ignore lint/a11y/noStaticElementInteractions lint/a11y/useKeyWithClickEvents: the buttons in it are pressed, by keys too */}
      <div
        id={id}
        className="heading-acts"
        data-open={isOpen || undefined}
        onClick={({ target }) => {
          if (isOpen && (target as Element).closest("button:not(.menu-drop)")) close()?.focus();
        }}
      >
        <FileButtons />
        <Preferences />
      </div>
    </div>
  );
}

/** Takes steps back and forth: Ctrl+Z and Ctrl+Shift+Z do the same; the list beside them names the steps. */
function StepButtons() {
  const undo = useWorkbench((s) => s.undo);
  const redo = useWorkbench((s) => s.redo);
  const canUndo = useCanUndo();
  const canRedo = useCanRedo();
  return (
    <span className="heading-group">
      <StepButton label="Undo" can={canUndo} onClick={undo} d="M8 4L4 8L8 12M4 8H12A4 4 0 0 1 12 16H8" />
      <StepButton label="Redo" can={canRedo} onClick={redo} d="M12 4L16 8L12 12M16 8H8A4 4 0 0 0 8 16H12" />
      <StepsMenu />
    </span>
  );
}

type StepButtonProps = { label: string; can: boolean; onClick: () => void; d: string };

function StepButton({ label, can, onClick, d }: StepButtonProps) {
  return (
    <button
      type="button"
      className="button heading-icon"
      aria-label={label}
      disabled={!can}
      onClick={onClick}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true">
        <path d={d} />
      </svg>
    </button>
  );
}
