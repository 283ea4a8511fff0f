import { type ClipboardEvent, useId } from "react";
import { isExampleAt } from "../../../setup/exampleMarks.ts";
import { isWithin, type KeyPath, parseKeyText } from "../../../setup/types/keyPath.ts";
import { fieldDraft, fieldText, isOfVariant, shownDocument } from "../../state/selectors.ts";
import { unusualAt } from "../../state/useDoubts.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { EntryInput } from "../fields/EntryInput.tsx";
import { FieldDoubts } from "../fields/FieldDoubts.tsx";
import { FieldFault } from "../fields/FieldFault.tsx";
import { useExampleWord, useIsFromExample } from "../fields/useIsFromExample.ts";

export type CoordinateRowProps = {
  label: string;
  path: KeyPath;
  columns: readonly string[];
  /** Its label is a number: what else is told of it stands in a sign, which the table explains. */
  isNumbered: boolean;
  isCurrent: boolean;
  onFocus: () => void;
  onPaste: (event: ClipboardEvent<HTMLInputElement>, column: number) => void;
};

/** One point: its name and a cell for each coordinate, with what is wrong with it below. */
export function CoordinateRow(props: CoordinateRowProps) {
  const { label, path, columns, isNumbered, isCurrent, onFocus, onPaste } = props;
  const id = useId();
  // One text for all cells, so that a change elsewhere draws nothing here anew.
  const texts = useWorkbench((s) => columns.map((_, i) => fieldText(s, [...path, i])).join("\n")).split("\n");
  const fault = useWorkbench((s) => {
    for (const i of columns.keys()) {
      const draft = fieldDraft(s, [...path, i]);
      if (draft) return `draft ${i} ${draft.mend}`;
    }
    for (const issue of s.issues) {
      const at = parseKeyText(issue.key);
      if (at && isWithin(at, path)) return `issue ${at[path.length] ?? "all"} ${issue.mend}`;
    }
    return null;
  });
  const isExample = useIsFromExample(path);
  // Of a point some of whose numbers are the truck's own by now, those that are not are named.
  const theirs = useWorkbench((s) =>
    isExample ? columns.filter((_, i) => isExampleAt(shownDocument(s), [...path, i])).join(", ") : "",
  ).split(", ");
  const which = theirs.length < columns.length ? ` ${theirs.join(", ")}` : "";
  const word = useExampleWord();
  const isUnusual = useWorkbench((s) => unusualAt(s, path).length > 0);
  const isOwn = useWorkbench((s) => isOfVariant(s, path));
  const [kind, column, mend] = /^(draft|issue) (\S+) ([\s\S]*)$/.exec(fault ?? "")?.slice(1) ?? [];
  const describedBy = fault === null ? undefined : `${id}-fault`;
  return (
    <tbody className={isCurrent ? "points-current" : undefined}>
      <tr>
        <th scope="row">
          {label}
          {isExample && (
            <span className="points-from">
              ⋯
              <span className={isNumbered ? "sr-only" : undefined}>
                {which} {word}
              </span>
            </span>
          )}
          {isOwn && <span className="points-own">◆ variant</span>}
        </th>
        {columns.map((name, i) => (
          <td
            key={name}
            data-field={[...path, i].join(".")}
            className={isExample && theirs.includes(name) ? "points-example" : undefined}
          >
            <EntryInput
              path={[...path, i]}
              text={texts[i] ?? ""}
              name={`${label}, ${name}`}
              isInvalid={column === String(i) || column === "all"}
              describedBy={column === String(i) || column === "all" ? describedBy : undefined}
              onFocus={onFocus}
              onPaste={(event) => onPaste(event, i)}
            />
          </td>
        ))}
      </tr>
      {mend !== undefined && (
        <tr>
          <td colSpan={columns.length + 1} className="points-fault">
            <FieldFault id={`${id}-fault`} path={path} mend={mend} isDraft={kind === "draft"} />
          </td>
        </tr>
      )}
      {isUnusual && (
        <tr>
          <td colSpan={columns.length + 1}>
            <FieldDoubts path={path} />
          </td>
        </tr>
      )}
    </tbody>
  );
}
