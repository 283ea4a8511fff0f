import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import { type KeyPath, valueAt } from "../../../setup/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { OptionalBlock } from "../groups/OptionalBlock.tsx";
import { CoordinateTable } from "../points/CoordinateTable.tsx";
import { PointList } from "../points/PointList.tsx";
import { AnyFields } from "./AnyFields.tsx";

export type AnyListProps = {
  path: KeyPath;
  title: string;
  note: string;
};

/** A list of any kind: points in a table, single values in a row of cells, or blocks one below the other. */
export function AnyList({ path, title, note }: AnyListProps) {
  const document = useWorkbench(shownDocument);
  const item = fieldAt([...path, 0], document);
  // Blocks of several sorts are told apart by a key of theirs, so the catalogue knows no entry without it.
  const sort = item?.kind ?? "block";
  const start = () => (sort === "block" ? [{}] : sort === "point" || sort === "list" ? [] : [0]);
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
        <ValueList path={path} title={title} />
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
