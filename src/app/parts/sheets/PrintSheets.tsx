import "./sheets.css";
import { useEffect, useRef, useState } from "react";
import { createPortal } from "react-dom";
import { pageSvgText } from "../../../files/writePageSvg.ts";
import type { Page } from "../../../geometry/page.ts";
import { PRINT_AT_SIZE } from "../../../studies/wording/drawingWords.ts";

/**
 * Prints every sheet, each on a page of its own size without a margin, so that it comes out 1:1. The sheets stand beside the
 * workbench in the page only while they are printed, so that nothing else is.
 */
export function PrintSheets({ pages }: { pages: readonly Page[] }) {
  const [isPrinting, setPrinting] = useState(false);
  const ref = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!isPrinting) return;
    let isGone = false;
    const end = () => setPrinting(false);
    const images = [...ref.current!.querySelectorAll("img")];
    void Promise.allSettled(images.map((image) => image.decode())).then(() => {
      if (isGone) return;
      document.documentElement.dataset.print = "drawings";
      addEventListener("afterprint", end, { once: true });
      window.print();
    });
    return () => {
      isGone = true;
      removeEventListener("afterprint", end);
      delete document.documentElement.dataset.print;
    };
  }, [isPrinting]);
  return (
    <div className="drawing-print">
      <button type="button" className="button" disabled={isPrinting} onClick={() => setPrinting(true)}>
        Print {pages.length === 1 ? "the sheet" : `all ${pages.length} sheets`}
      </button>
      <span>{PRINT_AT_SIZE}</span>
      {isPrinting && createPortal(<PrintedSheets ref={ref} pages={pages} />, document.body)}
    </div>
  );
}

function PrintedSheets({ ref, pages }: { ref: React.Ref<HTMLDivElement>; pages: readonly Page[] }) {
  const sizes = new Map(pages.map((page) => [sizeName(page), page]));
  const rules = [...sizes].map(
    ([name, { width, height }]) => `@page ${name} { size: ${width}mm ${height}mm; margin: 0 }`,
  );
  return (
    <div ref={ref} className="printed-sheets">
      <style>{rules.join("\n")}</style>
      {pages.map((page, i) => (
        <img
          // biome-ignore lint/suspicious/noArrayIndexKey: sheets are told apart by their place alone
          key={i}
          src={pageImage(page)}
          alt={page.title}
          style={
            {
              width: `${page.width}mm`,
              height: `${page.height}mm`,
              page: sizeName(page),
            } as React.CSSProperties
          }
        />
      ))}
    </div>
  );
}

/** Sheets lie on paper upright or lying. */
function sizeName({ width, height }: Page): string {
  return width > height ? "lying" : "upright";
}

const known = new WeakMap<Page, string>();

/** A page as the address of a picture. */
export function pageImage(page: Page): string {
  const address = known.get(page) ?? `data:image/svg+xml,${encodeURIComponent(pageSvgText(page))}`;
  known.set(page, address);
  return address;
}
