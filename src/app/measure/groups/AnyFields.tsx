import { fieldAt, setupFields } from "../../../setup/fieldCatalogue.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { LateBody, LateExtra } from "../../parts/late.tsx";
import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldRow } from "../fields/FieldRow.tsx";
import { unitHint } from "../fields/fieldWords.ts";
import { OptionalBlock } from "../fields/OptionalBlock.tsx";
import { CoordinateTable } from "../points/CoordinateTable.tsx";
import { PointFields } from "../points/PointFields.tsx";
import { PointList } from "../points/PointList.tsx";

// The catalogs are loaded where a member of a build is shown.
const TUBE_PICK = new LateBody(async () => (await import("./TubePick.tsx")).TubePick);

/**
 * The keys a block of the setup may have, in the schema's order. Where there are several sorts of the block, those of the
 * sort that the document says.
 */
export function keysOf(path: KeyPath, document: unknown): readonly string[] {
  const pattern = path.map((key) => (typeof key === "number" ? "*" : key));
  const keys = new Set<string>();
  for (const field of setupFields()) {
    const isInside = pattern.every((key, i) => field.pattern[i] === key);
    const key = field.pattern[pattern.length];
    if (!isInside || key === undefined || key === "*") continue;
    const isOwn = field.pattern.length === pattern.length + 1;
    const { when } = field;
    if (isOwn && when && valueAt(document, [...path, when.key]) !== when.is) continue;
    keys.add(key);
  }
  return [...keys];
}

// A block holds fields, a field may be a list, a list may hold blocks: the three call one another and live together.

export type AnyFieldsProps = {
  /** Of a block. */
  path: KeyPath;
  /** Keys that have a place elsewhere. Default none. */
  except?: readonly string[];
};

const NONE: readonly string[] = [];

/** Every field of a block as the schema has it, for blocks and keys that no form was drawn up for. */
export function AnyFields({ path, except = NONE }: AnyFieldsProps) {
  // Drawn anew when the block changes: its sort decides which fields there are.
  useWorkbench((s) => valueAt(shownDocument(s), path));
  const document = useWorkbench(shownDocument);
  return keysOf(path, document)
    .filter((key) => !except.includes(key))
    .map((key) => <AnyField key={key} path={[...path, key]} />);
}

export type AnyFieldProps = { path: KeyPath };

/** One field of any kind: a row, a point, a list, or a block with fields of its own. */
export function AnyField({ path }: AnyFieldProps) {
  const document = useWorkbench(shownDocument);
  const field = fieldAt(path, document);
  if (!field) return null;
  const note = sentence(
    field.default === null ? field.meaning : `${field.meaning}; if left empty: ${field.default}`,
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

type AnyListProps = {
  path: KeyPath;
  title: string;
  note: string;
};

/** A list of any kind: points in a table, single values in a row of cells, or blocks one below the other. */
function AnyList({ path, title, note }: AnyListProps) {
  const document = useWorkbench(shownDocument);
  const item = fieldAt([...path, 0], document);
  // Blocks of several sorts are told apart by a key of theirs, so the catalogue knows no entry without it.
  const sort = item?.kind ?? "block";
  const unit = item?.kind === "quantity" ? unitHint(item, fileUnitsOf(document)) : "";
  const start = () => [sort === "block" ? {} : sort === "point" ? [0, 0, 0] : sort === "list" ? [0, 0] : 0];
  return (
    <OptionalBlock path={path} title={title} note={note} start={start}>
      {sort === "point" || sort === "numbers" || sort === "list" ? (
        <PointList
          path={path}
          caption={title}
          columns={columnsOf(path, document)}
          least={0}
          copies={sort !== "point"}
        />
      ) : sort === "block" ? (
        <BlockList path={path} />
      ) : (
        <ValueList path={path} title={unit === "" ? title : `${title}, ${unit}`} />
      )}
    </OptionalBlock>
  );
}

function columnsOf(path: KeyPath, document: unknown): readonly string[] {
  return [0, 1, 2].flatMap((i) => fieldAt([...path, 0, i], document)?.label ?? []);
}

function ValueList({ path, title }: { path: KeyPath; title: string }) {
  const count = useWorkbench((s) => lengthAt(valueAt(shownDocument(s), path)));
  const { insertItem, removeItem } = workbench.getState();
  const columns = Array.from({ length: count }, (_, i) => String(i + 1));
  const last = () => valueAt(shownDocument(workbench.getState()), [...path, count - 1]);
  return (
    <>
      <CoordinateTable
        caption={title}
        rowHead=""
        columns={columns}
        rows={[{ label: title.toLowerCase(), path }]}
      />
      <div className="row-tools">
        <button type="button" className="small-button" onClick={() => insertItem(path, count, last() ?? 0)}>
          Add after
        </button>
        <button
          type="button"
          className="small-button"
          disabled={count === 0}
          onClick={() => removeItem(path, count - 1)}
        >
          Remove the last
        </button>
      </div>
    </>
  );
}

function BlockList({ path }: { path: KeyPath }) {
  const count = useWorkbench((s) => lengthAt(valueAt(shownDocument(s), path)));
  const { insertItem, removeItem } = workbench.getState();
  const copy = () => valueAt(shownDocument(workbench.getState()), [...path, count - 1]) ?? {};
  return (
    <ol>
      {Array.from({ length: count }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an entry is its place in the list
        <li key={i} className="stance">
          {path.join(".") === "build.members" && (
            <LateExtra of={TUBE_PICK} props={{ path: [...path, i] }} about={count} />
          )}
          <AnyFields path={[...path, i]} />
          <button type="button" className="small-button" onClick={() => removeItem(path, i)}>
            Remove no. {i + 1}
          </button>
        </li>
      ))}
      <li>
        <button type="button" className="small-button" onClick={() => insertItem(path, count, copy())}>
          Add after no. {count}
        </button>
      </li>
    </ol>
  );
}

function lengthAt(value: unknown): number {
  return Array.isArray(value) ? value.length : 0;
}
