import "./docs.css";
import { useLayoutEffect, useRef } from "react";
import { createPortal } from "react-dom";
import { Late, LateBody } from "../parts/late.tsx";
import { usePageMark } from "../parts/usePageMark.ts";
import { FIRST_PAGE, openDocs, useDocPlace } from "./reader.ts";

// Text and its parser are loaded where somebody reads.
const DOC_PAGE = new LateBody(async () => (await import("./DocPage.tsx")).default);

/** The documents over the workbench, while they are open. */
export function DocReader() {
  const at = useDocPlace();
  return at === null ? null : createPortal(<OpenReader />, document.body);
}

function OpenReader() {
  const dialog = useRef<HTMLDialogElement>(null);
  const at = useDocPlace();
  usePageMark("docs", "open");
  useLayoutEffect(() => dialog.current!.showModal(), []);
  if (at === null) return null;
  return (
    <dialog ref={dialog} className="docs" aria-labelledby="docs-title" onClose={() => openDocs(null)}>
      <header className="docs-head">
        <h1 id="docs-title">Help</h1>
        {at.page !== FIRST_PAGE && (
          <button
            type="button"
            className="button"
            onClick={() => openDocs({ page: FIRST_PAGE, anchor: null })}
          >
            ← All help
          </button>
        )}
        <button type="button" className="button docs-close" onClick={() => dialog.current!.close()}>
          ✕ Close
        </button>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it is scrolled with the arrow keys */}
      <article className="docs-page" tabIndex={0} aria-label="Page">
        <Late of={DOC_PAGE} props={{ at }} words="Opening the page…" />
      </article>
    </dialog>
  );
}
