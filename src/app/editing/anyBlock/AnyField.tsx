import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import type { KeyPath } from "../../../setup/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { FieldRow } from "../FieldRow.tsx";
import { OptionalBlock } from "../groups/OptionalBlock.tsx";
import { PointFields } from "../points/PointFields.tsx";
import { AnyFields } from "./AnyFields.tsx";
import { AnyList } from "./AnyList.tsx";

export type AnyFieldProps = { path: KeyPath };

/** One field of any kind: a row, a point, a list, or a block with fields of its own. */
export function AnyField({ path }: AnyFieldProps) {
  const document = useWorkbench(shownDocument);
  const field = fieldAt(path, document);
  if (!field) return null;
  const note = sentence(
    field.default === null ? field.meaning : `${field.meaning}; left out: ${field.default}`,
  );
  switch (field.kind) {
    case "block":
      return (
        <OptionalBlock path={path} title={field.label} note={note} start={() => ({})}>
          <AnyFields path={path} />
        </OptionalBlock>
      );
    case "point":
    case "numbers":
      return (
        <OptionalBlock
          path={path}
          title={field.label}
          note={note}
          start={() => [0, 0, field.kind === "point" ? 0 : 1]}
        >
          <PointFields caption={field.label} rowHead="" rows={[{ label: field.label.toLowerCase(), path }]} />
        </OptionalBlock>
      );
    case "list":
      return <AnyList path={path} title={field.label} note={note} />;
    default:
      return <FieldRow path={path} />;
  }
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
