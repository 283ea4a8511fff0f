import "./shareComparison.css";
import { useEffect, useRef, useState } from "react";
import { COMPARISON_LINK, codeText } from "../../../studies/wording/packetTexts.ts";
import { QrCode, useCode } from "./QrCode.tsx";
import type { Comparison } from "./useComparison.ts";
import { useComparisonLink } from "./useComparisonLink.ts";

/** Shares what is compared: on a press, a link to copy and a code to scan, kept up to date while they are shown. */
export function ShareComparison({ comparison }: { comparison: Comparison }) {
  const [isOpen, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    const layer = button.current?.closest("dialog");
    if (!isOpen || !layer) return;
    // Escape puts away what was opened last: the counter stays.
    const cancel = (event: Event) => {
      if (event.target !== layer) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      setOpen(false);
      button.current?.focus();
    };
    layer.addEventListener("cancel", cancel, { capture: true });
    return () => layer.removeEventListener("cancel", cancel, { capture: true });
  }, [isOpen]);
  return (
    <>
      <button
        ref={button}
        type="button"
        className="button"
        aria-expanded={isOpen}
        onClick={() => setOpen(!isOpen)}
      >
        Share this comparison
      </button>
      {isOpen && <Shared comparison={comparison} />}
    </>
  );
}

function Shared({ comparison }: { comparison: Comparison }) {
  const link = useComparisonLink(comparison, true);
  const code = useCode(link?.ok ? link.url : null);
  const [copied, setCopied] = useState("");
  if (link === null) return <p className="counter-share">Making the link…</p>;
  if (!link.ok) return <p className="counter-share">No link: {link.mend}.</p>;
  const { url } = link;
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(url);
      setCopied(url);
    } catch {
      // A browser may keep the clipboard to itself: the link stands there to be copied by hand.
      setCopied("");
    }
  };
  return (
    <section className="counter-share" aria-label="Share this comparison">
      {code && <QrCode code={code} label="Code that opens this comparison" />}
      <div>
        <p>{COMPARISON_LINK}</p>
        <p className="counter-share-link">
          <input
            readOnly
            value={url}
            aria-label="Link to this comparison"
            onFocus={(e) => e.target.select()}
          />
          <button type="button" className="button" onClick={() => void copy()}>
            Copy
          </button>
          {"share" in navigator && (
            // Given up by hand it refuses: nothing to tell.
            <button
              type="button"
              className="button"
              onClick={() => void navigator.share({ title: document.title, url }).catch(() => {})}
            >
              Send…
            </button>
          )}
        </p>
        <p role="status">{copied === url ? "Copied." : codeText(url.length, code !== null)}</p>
      </div>
    </section>
  );
}
