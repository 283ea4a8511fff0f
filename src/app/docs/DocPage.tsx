import { marked, type Token } from "marked";
import { useEffect, useRef, useState } from "react";
import { NotFetched } from "../parts/NotFetched.tsx";
import { DocTokens } from "./DocTokens.tsx";
import { pageText } from "./docPages.ts";
import { FirstPage } from "./FirstPage.tsx";
import { anchorOf, type DocPlace, FIRST_PAGE } from "./reader.ts";
import { useFetched } from "./useFetched.ts";

/** One page of the documents. */
export default function DocPage({ at }: { at: DocPlace }) {
  const read = useFetched(at.page, tokensOf);
  // What is searched for is still there on the way back from what was found.
  const [typed, setTyped] = useState("");
  const isThere = read.is === "there";
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
  if (read.is === "missing") return <NotFetched what="This page" onAgain={read.askAgain} />;
  if (read.is === "awaited") return <p>Opening the page…</p>;
  if (at.page === FIRST_PAGE) return <FirstPage typed={typed} onTyped={setTyped} />;
  return read.value ? (
    <DocTokens tokens={read.value} page={at.page} />
  ) : (
    <p>There is no page called “{at.page}”.</p>
  );
}

async function tokensOf(page: string): Promise<readonly Token[] | null> {
  const text = await pageText(page);
  return text === null ? null : marked.lexer(text);
}

/** The heading of a name, or the row of a table that begins with it. */
function elementAt(anchor: string): HTMLElement | null {
  const isNamed = (row: HTMLTableRowElement) =>
    row.cells[0]?.textContent.split(", ").some((name) => anchorOf(name) === anchor);
  const rows = document.querySelectorAll<HTMLTableRowElement>(".docs-page tr");
  return document.getElementById(`doc-${anchor}`) ?? [...rows].find(isNamed) ?? null;
}
