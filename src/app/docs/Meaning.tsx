import "./meaning.css";
import { memo, useState } from "react";
import { NotFetched } from "../parts/NotFetched.tsx";
import { definitionIn, pageText } from "./docPages.ts";
import { anchorOf, openDocs } from "./reader.ts";
import { useFetched } from "./useFetched.ts";

/** What a result means, behind a “?” beside its name: the line that the definitions have of it. @param of as they name it */
export const Meaning = memo(function Meaning({ of }: { of: string }) {
  const [isOpen, setOpen] = useState(false);
  const text = useFetched(isOpen ? of : null, definitionOf);
  return (
    <details className="meaning" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary aria-label={`What is ${of}?`}>?</summary>
      {text.is === "missing" && <NotFetched what="The definitions" onAgain={text.askAgain} />}
      {text.is === "there" && text.value !== null && (
        <p>
          {text.value}.{" "}
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
});

async function definitionOf(name: string): Promise<string | null> {
  return definitionIn((await pageText("definitions")) ?? "", name);
}
