import "./exampleFields.css";
import { useState } from "react";
import { fieldAt } from "../../setup/fieldCatalogue.ts";
import { type KeyPath, keyText, valueAt } from "../../setup/types/keyPath.ts";
import { BUILD_NUMBERS } from "../../studies/wording/answerWords.ts";
import { readInPart } from "../../studies/wording/assumedWords.ts";
import { fieldName } from "../../studies/wording/fieldName.ts";
import { shownDocument } from "../state/selectors.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
import { goToField } from "./fields/fieldAsked.ts";
import { valueWords } from "./fields/fieldWords.ts";
import { useExampleWord } from "./fields/useIsFromExample.ts";

export type ExampleFieldsProps = {
  truck: Truck;
};

/** Every number that is still an example's, on request: with a way to its field, and to say that it is right as it stands. */
export function ExampleFields({ truck }: ExampleFieldsProps) {
  const { fromExample } = truck.setup;
  const word = useExampleWord();
  const [isOpen, setOpen] = useState(false);
  if (fromExample === null || fromExample.fields.length === 0) return null;
  const { length } = fromExample.fields;
  return (
    <details className="example-fields" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {length === 1 ? "The number" : `List the ${length} numbers`} {word}
      </summary>
      <div className="example-list">
        {(isOpen ? blocksOf(fromExample.fields) : []).map(([block, fields]) => (
          <Block key={keyText(block)} block={block} fields={fields} />
        ))}
      </div>
    </details>
  );
}

function Block({ block, fields }: { block: KeyPath; fields: readonly KeyPath[] }) {
  const document = useWorkbench(shownDocument);
  const title = fieldAt(block, document)?.label ?? fieldName(block, document);
  const { claimFields } = workbench.getState();
  return (
    <section className="example-block">
      <header>
        <h3>{title}</h3>
        <button type="button" className="small-button" onClick={() => claimFields([block])}>
          {title}: all of it is right, I measured it
        </button>
      </header>
      {block[0] === "build" && <p className="example-note">{BUILD_NUMBERS}</p>}
      <ul>
        {fields.map((path) => (
          <li key={keyText(path)}>
            <span>
              <button type="button" className="link-button" onClick={() => goToField(path)}>
                {fieldName(path, document)}
              </button>{" "}
              {valueWords(workbench.getState(), path, valueAt(document, path))}
              <PartNote path={path} />
            </span>
            <button
              type="button"
              className="small-button"
              aria-label={`${fieldName(path, document)} is right, I measured it`}
              onClick={() => claimFields([path])}
            >
              This one is right, I measured it
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What of a point is read already. */
function PartNote({ path }: { path: KeyPath }) {
  const note = readInPart(path, useWorkbench(shownDocument));
  return note && <small className="example-part">{note}</small>;
}

/** Fields by the block they are in; of the truck, by the blocks of it. */
function blocksOf(fields: readonly KeyPath[]): readonly (readonly [KeyPath, readonly KeyPath[]])[] {
  const blocks = new Map<string, [KeyPath, KeyPath[]]>();
  for (const path of fields) {
    const block = path.slice(0, path[0] === "truck" ? 2 : 1);
    const known = blocks.get(keyText(block)) ?? [block, []];
    known[1].push(path);
    blocks.set(keyText(block), known);
  }
  return [...blocks.values()];
}
