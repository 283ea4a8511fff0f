import { useState } from "react";
import type { Page } from "../../../geometry/page.ts";
import { pageImage } from "../../parts/sheets/PrintSheets.tsx";

/** One sheet at a time, as it prints; white in every theme, as paper is. */
export function SheetPreview({ pages }: { pages: readonly Page[] }) {
  const [asked, setAsked] = useState(0);
  const at = Math.min(asked, pages.length - 1);
  const page = pages[at]!;
  const step = (by: number) => setAsked(Math.min(Math.max(0, at + by), pages.length - 1));
  return (
    <figure className="sheet-shown">
      <div className="sheet-steps">
        <button
          type="button"
          className="button"
          aria-label="Sheet before"
          disabled={at === 0}
          onClick={() => step(-1)}
        >
          ‹
        </button>
        <figcaption aria-live="polite">
          Sheet {at + 1} of {pages.length}: {page.title}
        </figcaption>
        <button
          type="button"
          className="button"
          aria-label="Next sheet"
          disabled={at === pages.length - 1}
          onClick={() => step(1)}
        >
          ›
        </button>
      </div>
      <img
        src={pageImage(page)}
        alt={page.title}
        width={Math.round(page.width * 4)}
        height={Math.round(page.height * 4)}
      />
    </figure>
  );
}
