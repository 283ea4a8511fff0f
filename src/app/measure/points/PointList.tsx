import { useState } from "react";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { pointAfter } from "./between.ts";
import { CoordinateTable } from "./CoordinateTable.tsx";

export type PointListProps = {
  path: KeyPath;
  caption: string;
  /** Default x, y, z. */
  columns?: readonly string[];
  /** Fewest rows; the last of them cannot be removed. */
  least: number;
  /** A new row is a copy of the one before it, not a point between. Default false. */
  copies?: boolean;
  /** Row pointed out, where that is known elsewhere too. Default its own. */
  current?: number;
  onCurrent?: (row: number) => void;
};

/** Rows on a page: a mesh has thousands, and each row is four fields. */
const PAGE = 50;
const XYZ = ["x", "y", "z"] as const;

/** A list of points that can grow, shrink and be put in another order. */
export function PointList(props: PointListProps) {
  const { path, caption, columns = XYZ, least, copies = false } = props;
  const points = useWorkbench((s) => valueAt(shownDocument(s), path));
  const [ownRow, setOwnRow] = useState(0);
  const current = props.current ?? ownRow;
  const setCurrent = props.onCurrent ?? setOwnRow;
  const [page, setPage] = useState(0);
  const list: readonly unknown[] = Array.isArray(points) ? points : [];
  const pages = Math.max(1, Math.ceil(list.length / PAGE));
  const first = Math.min(page, pages - 1) * PAGE;
  const at = Math.min(current, Math.max(0, list.length - 1));
  const { insertItem, moveItem, removeItem } = workbench.getState();
  const move = (to: number) => {
    moveItem(path, at, to);
    setCurrent(to);
  };
  const rows = list.slice(first, first + PAGE).map((_, i) => ({
    label: String(first + i + 1),
    path: [...path, first + i],
  }));
  return (
    <CoordinateTable
      caption={caption}
      rowHead="no."
      columns={columns}
      rows={rows}
      list={path}
      current={at - first}
      onRow={(row) => setCurrent(first + row)}
    >
      {pages > 1 && (
        <div className="points-pages">
          <button
            type="button"
            className="small-button"
            disabled={first === 0}
            onClick={() => setPage(page - 1)}
          >
            Earlier rows
          </button>
          <span>
            {first + 1} to {first + rows.length} of {list.length}
          </span>
          <button
            type="button"
            className="small-button"
            disabled={first + PAGE >= list.length}
            onClick={() => setPage(page + 1)}
          >
            Later rows
          </button>
        </div>
      )}
      <fieldset className="points-tools">
        <legend>Row {at + 1}</legend>
        <button
          type="button"
          className="small-button"
          onClick={() => {
            insertItem(path, at + 1, copies && at in list ? list[at] : pointAfter(list, at, columns.length));
            setCurrent(at + 1);
          }}
        >
          Add after
        </button>
        <button type="button" className="small-button" disabled={at === 0} onClick={() => move(at - 1)}>
          Up
        </button>
        <button
          type="button"
          className="small-button"
          disabled={at >= list.length - 1}
          onClick={() => move(at + 1)}
        >
          Down
        </button>
        <button
          type="button"
          className="small-button"
          disabled={list.length <= least}
          onClick={() => removeItem(path, at)}
        >
          Remove
        </button>
      </fieldset>
    </CoordinateTable>
  );
}
