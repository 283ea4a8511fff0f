import { useState } from "react";
import { type KeyPath, keyText, valueAt } from "../../../setup/types/keyPath.ts";
import { fieldIssue, hasDraftIn, isOfVariant, shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { unusualAt } from "../../state/useDoubts.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldDoubts } from "../fields/FieldDoubts.tsx";
import { FieldRow } from "../fields/FieldRow.tsx";
import { UnusualTag } from "../fields/UnusualTag.tsx";
import { PointFields } from "../points/PointFields.tsx";
import { MeshFields } from "./MeshFields.tsx";
import { PartName } from "./PartName.tsx";
import { PathFields } from "./PathFields.tsx";

export type BodyPartFieldsProps = {
  index: number;
  count: number;
  kind: string;
  name: string;
  truck: Truck;
  /** Just added: it comes open, at its name. */
  isFresh: boolean;
};

const KIND_WORDS: Readonly<Record<string, string>> = { path: "line", box: "box", mesh: "surface" };
const BODY: KeyPath = ["truck", "body"];
const NO_NAMES: readonly string[] = [];

/** One body part: closed, its name and whether it is drawn; open, all its fields. */
export function BodyPartFields({ index, count, kind, name, truck, isFresh }: BodyPartFieldsProps) {
  const path: KeyPath = [...BODY, index];
  const [isOpen, setIsOpen] = useState(isFresh);
  const isHidden = useWorkbench((s) => s.hiddenParts.includes(name));
  const isOwn = useWorkbench((s) => isOfVariant(s, path));
  const hasFault = useWorkbench((s) => hasDraftIn(s, path) || fieldIssue(s, path) !== null);
  const isUnusual = useWorkbench((s) => unusualAt(s, path).length > 0);
  const { setHidden, moveItem, removeItem } = workbench.getState();
  return (
    <div className="part">
      <details
        data-part={keyText(path)}
        open={isOpen}
        onToggle={(event) => setIsOpen(event.currentTarget.open)}
      >
        <summary>
          <h4>{name === "" ? `part ${index + 1}` : name}</h4>
          <small>{KIND_WORDS[kind] ?? kind}</small>
          {isOwn && <span className="group-own">◆ variant</span>}
          {hasFault && <span className="group-fault">✕ to fix</span>}
          {isUnusual && <UnusualTag />}
        </summary>
        {isOpen && (
          <div className="part-fields">
            {isUnusual && <FieldDoubts path={path} />}
            <PartName path={[...path, "name"]} name={name} taken={otherNames(index)} isFirst={isFresh} />
            <FieldRow path={[...path, "side"]} label="Side" />
            {kind === "path" && <PathFields path={path} name={name} truck={truck} />}
            {kind === "box" && (
              <PointFields
                caption={`Corners of ${name}`}
                rowHead="corner"
                rows={[
                  { label: "lowest", path: [...path, "min"] },
                  { label: "highest", path: [...path, "max"] },
                ]}
              />
            )}
            {kind === "mesh" && <MeshFields path={path} truck={truck} />}
            <div className="row-tools">
              <button
                type="button"
                className="small-button"
                disabled={index === 0}
                onClick={() => moveItem(BODY, index, index - 1)}
              >
                Earlier in the list
              </button>
              <button
                type="button"
                className="small-button"
                disabled={index === count - 1}
                onClick={() => moveItem(BODY, index, index + 1)}
              >
                Later
              </button>
              <button type="button" className="small-button" onClick={() => removeItem(BODY, index)}>
                Remove {name}
              </button>
            </div>
          </div>
        )}
      </details>
      <button
        type="button"
        className="part-eye"
        aria-pressed={isHidden}
        aria-label={`Hide ${name} in the picture`}
        title="Hidden parts are measured all the same"
        onClick={() => setHidden(name, !isHidden)}
      >
        {isHidden ? "hidden" : "hide"}
      </button>
    </div>
  );
}

function otherNames(index: number): readonly string[] {
  const body = valueAt(shownDocument(workbench.getState()), BODY);
  if (!Array.isArray(body)) return NO_NAMES;
  return body.flatMap((part, i) => (i === index ? [] : [String(valueAt(part, ["name"]))]));
}
