import { type KeyboardEvent, useRef } from "react";
import type { ChartDocument } from "../../../studies/chart/chartDocument.ts";
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
  const hasAmounts = columns <= WITH_AMOUNTS;
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Enter") onOpen(at);
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const within = (value: number, count: number) => Math.min(Math.max(value, 0), count - 1);
    const next = { column: within(at.column + step[0], columns), row: within(at.row + step[1], rows) };
    onAt(next);
    table.current?.querySelector<HTMLElement>(`[data-cell="${next.column},${next.row}"]`)?.focus();
  };
  return (
    <div className="chart-scroll" data-amounts={hasAmounts || undefined}>
      {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: its cells are chosen by arrow keys, as a grid's are */}
      <table ref={table} className="chart-grid" role="grid" aria-label={`${y.name} against ${x.name}`}>
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
          {cells.map((row, j) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: as above
            <tr key={j}>
              <th scope="row">{y.labels[j]}</th>
              {row.map((cell, i) => {
                const sort = cellSort(cell);
                const isAt = at.column === i && at.row === j;
                const isPresent = present?.column === i && present.row === j;
                return (
                  <td
                    // biome-ignore lint/suspicious/noArrayIndexKey: as above
                    key={i}
                    data-cell={`${i},${j}`}
                    data-sort={sort === "clear" && isDoubted ? "doubted" : sort}
                    data-present={isPresent || undefined}
                    // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: as above
                    role="gridcell"
                    aria-selected={isAt}
                    aria-label={cellSentence(chart, i, j, format)}
                    tabIndex={isAt ? 0 : -1}
                    onFocus={() => onAt({ column: i, row: j })}
                    onPointerEnter={(event) => event.pointerType === "mouse" && onAt({ column: i, row: j })}
                    onKeyDown={onKeyDown}
                    onClick={() => onAt({ column: i, row: j })}
                    onDoubleClick={() => onOpen({ column: i, row: j })}
                  >
                    {CELL_MARKS[sort]}
                    {hasAmounts && <small>{cellAmount(cell, format).replace(/ (?:in|mm)$/, "")}</small>}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
