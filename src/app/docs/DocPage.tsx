import { marked, type Token } from "marked";
import { useEffect, useRef, useState } from "react";
import { DocTokens } from "./DocTokens.tsx";
import { pageText } from "./docPages.ts";
import { FirstPage } from "./FirstPage.tsx";
import { anchorOf, type DocPlace, FIRST_PAGE } from "./reader.ts";

/** One page of the documents. */
export default function DocPage({ at }: { at: DocPlace }) {
  const [read, setRead] = useState<{
    readonly page: string;
    readonly tokens: readonly Token[] | null;
  } | null>(null);
  // What is searched for is still there on the way back from what was found.
  const [typed, setTyped] = useState("");
  useEffect(() => {
    let isLate = false;
    void pageText(at.page).then((text) => {
      if (!isLate) setRead({ page: at.page, tokens: text === null ? null : marked.lexer(text) });
    });
    return () => {
      isLate = true;
    };
  }, [at.page]);
  const isThere = read?.page === at.page;
  const isOpened = useRef(false);
  useEffect(() => {
    if (!isThere) return;
    const to = at.anchor === null ? null : elementAt(at.anchor);
    if (to) {
      to.tabIndex = -1;
      to.scrollIntoView({ block: "start" });
      to.focus({ preventScroll: true });
    } else {
      const page = document.querySelector<HTMLElement>(".docs-page");
      page?.scrollTo(0, 0);
      // What was pressed to get here is gone with the page before.
      if (isOpened.current) page?.focus({ preventScroll: true });
    }
    isOpened.current = true;
  }, [isThere, at]);
  if (!isThere) return <p>Opening the page…</p>;
  if (at.page === FIRST_PAGE) return <FirstPage typed={typed} onTyped={setTyped} />;
  return read.tokens ? (
    <DocTokens tokens={read.tokens} page={at.page} />
  ) : (
    <p>There is no page called “{at.page}”.</p>
  );
}

/** The heading of a name, or the row of a table that begins with it. */
function elementAt(anchor: string): HTMLElement | null {
  const isNamed = (row: HTMLTableRowElement) =>
    row.cells[0]?.textContent.split(", ").some((name) => anchorOf(name) === anchor);
  const rows = document.querySelectorAll<HTMLTableRowElement>(".docs-page tr");
  return document.getElementById(`doc-${anchor}`) ?? [...rows].find(isNamed) ?? null;
}
