import { marked, type Token } from "marked";
import { useEffect, useState } from "react";
import { DocTokens } from "./DocTokens.tsx";
import { pageText } from "./docPages.ts";
import type { DocPlace } from "./reader.ts";

/** One page of the documents. */
export default function DocPage({ at }: { at: DocPlace }) {
  const [read, setRead] = useState<{
    readonly page: string;
    readonly tokens: readonly Token[] | null;
  } | null>(null);
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
  useEffect(() => {
    if (!isThere) return;
    const to = at.anchor === null ? null : document.getElementById(`doc-${at.anchor}`);
    if (to) {
      to.scrollIntoView({ block: "start" });
      to.focus({ preventScroll: true });
    } else document.querySelector(".docs-page")?.scrollTo(0, 0);
  }, [isThere, at]);
  if (!isThere) return <p>Opening the page…</p>;
  return read.tokens ? (
    <DocTokens tokens={read.tokens} page={at.page} />
  ) : (
    <p>There is no page called “{at.page}”.</p>
  );
}
