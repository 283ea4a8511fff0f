import "./heading.css";
import { openDocs } from "../../docs/reader.ts";
import { isDirty } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { FileButtons } from "./FileButtons.tsx";
import { Notices } from "./Notices.tsx";
import { Preferences } from "./Preferences.tsx";
import { StepButtons } from "./StepButtons.tsx";
import { VariantPicker } from "./VariantPicker.tsx";

/** Like the title block of a drawing: the program, the setup on the board, which variant of it, and what to do with it. */
export function Heading() {
  const truck = useWorkbench((s) => s.truck);
  const name = useWorkbench((s) => s.document?.name as string | undefined);
  const dirty = useWorkbench(isDirty);
  return (
    <>
      <header className="heading">
        <h1 className="heading-name">Wellsweep</h1>
        <p className="heading-setup">
          <span>{truck ? truck.setup.name : (name ?? "no setup yet")}</span>
          {dirty && (
            <span className="heading-dirty" title="kept in this browser, not yet saved to a file">
              not saved to a file
            </span>
          )}
        </p>
        {truck && <VariantPicker truck={truck} />}
        <StepButtons />
        <div className="heading-acts">
          <FileButtons />
          <Preferences />
          <button
            type="button"
            className="button"
            onClick={() => openDocs({ page: "definitions", anchor: null })}
          >
            Help
          </button>
        </div>
      </header>
      <Notices />
    </>
  );
}
