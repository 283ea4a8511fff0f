import "./meaning.css";
import { useEffect, useState } from "react";
import { definitionIn, pageText } from "./docPages.ts";
import { anchorOf, openDocs } from "./reader.ts";

/** What a result means, behind a “?” beside its name: the line that the definitions have of it. @param of as they name it */
export function Meaning({ of }: { of: string }) {
  const [isOpen, setOpen] = useState(false);
  const [text, setText] = useState<string | null>(null);
  useEffect(() => {
    if (isOpen) void pageText("definitions").then((page) => setText(definitionIn(page ?? "", of)));
  }, [isOpen, of]);
  return (
    <details className="meaning" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary aria-label={`What is ${of}?`}>?</summary>
      {isOpen && text !== null && (
        <p>
          {text}.{" "}
          <button
            type="button"
            className="small-button"
            onClick={() => openDocs({ page: "definitions", anchor: anchorOf(of) })}
          >
            All definitions
          </button>
        </p>
      )}
    </details>
  );
}
