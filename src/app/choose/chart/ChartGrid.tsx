import { type CSSProperties, type KeyboardEvent, memo, type SyntheticEvent, useRef } from "react";
import type { AxisDocument, ChartDocument } from "../../../studies/chart/chartDocument.ts";
import { CELL_MARKS, cellAmount, cellSentence, cellSort } from "../../../studies/wording/chartWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";

export interface Place {
  readonly column: number;
  readonly row: number;
}

export type ChartGridProps = {
  chart: ChartDocument;
  format: LengthFormat;
  at: Place;
  /** Something of the truck is in doubt: nothing is drawn as clear. */
  isDoubted: boolean;
  onAt: (place: Place) => void;
  onOpen: (place: Place) => void;
};

/** Columns up to which amounts stand beside the marks. */
const WITH_AMOUNTS = 12;

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The chart as a grid: each cell by its mark and text; arrow keys, pointer and touch choose one, Enter keeps it as a variant. */
export function ChartGrid({ chart, format, at, isDoubted, onAt, onOpen }: ChartGridProps) {
  const table = useRef<HTMLTableElement>(null);
  const { x, y, present, cells } = chart;
  const [columns, rows] = [x.labels.length, y.labels.length];
  const onKeyDown = (event: KeyboardEvent) => {
    if (placeOf(event) === null) return;
    if (event.key === "Enter") onOpen(at);
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const within = (value: number, count: number) => Math.min(Math.max(value, 0), count - 1);
    const next = { column: within(at.column + step[0], columns), row: within(at.row + step[1], rows) };
    onAt(next);
    table.current?.querySelector<HTMLElement>(`[data-cell="${next.column},${next.row}"]`)?.focus();
  };
  const choose = (event: SyntheticEvent) => {
    const place = placeOf(event);
    if (place !== null) onAt(place);
  };
  return (
    <div className="chart-scroll" data-amounts={columns <= WITH_AMOUNTS || undefined}>
      <table
        ref={table}
        className="chart-grid"
        style={{ "--columns": columns } as CSSProperties}
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: its cells are chosen by arrow keys, as a grid's are
        role="grid"
        aria-label={`${y.name} against ${x.name}`}
        onFocus={choose}
        onClick={choose}
        onPointerOver={(event) => event.pointerType === "mouse" && choose(event)}
        onKeyDown={onKeyDown}
        onDoubleClick={(event) => {
          const place = placeOf(event);
          if (place !== null) onOpen(place);
        }}
      >
        <thead>
          <tr>
            <th scope="col">
              {y.name} ↓ {x.name} →
            </th>
            {x.labels.map((label, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two entries of a list may have one name
              <th key={i} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {cells.map((_, row) => (
            <Row
              // biome-ignore lint/suspicious/noArrayIndexKey: as above
              key={row}
              chart={chart}
              row={row}
              format={format}
              at={at.row === row ? at.column : null}
              present={present?.row === row ? present.column : null}
              isDoubted={isDoubted}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}

type RowProps = {
  chart: ChartDocument;
  row: number;
  format: LengthFormat;
  /** The column chosen; null = in another row. */
  at: number | null;
  /** That of the truck as it stands; null = in another row. */
  present: number | null;
  isDoubted: boolean;
};

/** Drawn anew where something of it changes: each piece of a chart that comes fills a few cells of a few rows. */
const Row = memo(function Row({ chart, row, format, at, present, isDoubted }: RowProps) {
  const { x, y, cells } = chart;
  const hasAmounts = x.labels.length <= WITH_AMOUNTS;
  return (
    <tr>
      <th scope="row">{y.labels[row]}</th>
      {cells[row]!.map((cell, column) => {
        const sort = cellSort(cell);
        return (
          <td
            // biome-ignore lint/suspicious/noArrayIndexKey: as above
            key={column}
            data-cell={`${column},${row}`}
            data-sort={sort === "clear" && isDoubted ? "doubted" : sort}
            data-present={present === column || undefined}
            // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: as above
            role="gridcell"
            aria-selected={at === column}
            aria-label={cellSentence(chart, column, row, format)}
            tabIndex={at === column ? 0 : -1}
          >
            {CELL_MARKS[sort]}
            {hasAmounts && <small>{cellAmount(cell, format).replace(/ (?:in|mm)$/, "")}</small>}
          </td>
        );
      })}
    </tr>
  );
}, isSameRow);

function isSameRow(a: RowProps, b: RowProps): boolean {
  const [{ x, y, cells }, other] = [a.chart, b.chart];
  const [before, now] = [cells[a.row]!, other.cells[b.row]!];
  return (
    a.at === b.at &&
    a.present === b.present &&
    a.isDoubted === b.isDoubted &&
    a.format === b.format &&
    a.chart.units === other.units &&
    isSameAxis(x, other.x) &&
    isSameAxis(y, other.y) &&
    before.every((cell, i) => {
      const then = now[i]!;
      return cell === then || ("unfinished" in cell && "unfinished" in then);
    })
  );
}

function isSameAxis(a: AxisDocument, b: AxisDocument): boolean {
  return (
    a.name === b.name &&
    a.labels.length === b.labels.length &&
    a.labels.every((label, i) => label === b.labels[i])
  );
}

/** The cell that something happens in; null = none. */
function placeOf({ target }: SyntheticEvent): Place | null {
  const cell = target instanceof Element ? target.closest<HTMLElement>("[data-cell]") : null;
  if (cell === null) return null;
  const [column, row] = cell.dataset.cell!.split(",").map(Number);
  return { column: column!, row: row! };
}
