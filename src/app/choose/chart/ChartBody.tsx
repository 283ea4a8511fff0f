import "./chart.css";
import { useMemo, useState } from "react";
import { writtenValues } from "../../../setup/editing/writtenValues.ts";
import { axisPlace, entryChange } from "../../../studies/chart/chartAxis.ts";
import { chartCsv } from "../../../studies/chart/chartDocument.ts";
import { chartOrder, FIRST_CELLS } from "../../../studies/chart/chartOrder.ts";
import type { ChartAsk } from "../../../studies/chart/chartTypes.ts";
import type { AxisSubject } from "../../../studies/chart/readAxis.ts";
import { CAUTIONS } from "../../../studies/wording/cautions.ts";
import {
  cellSentence,
  chartSentences,
  chartTitle,
  legendSentence,
  posesSentence,
  tooManyCells,
} from "../../../studies/wording/chartWords.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import { printAlone } from "../../parts/printAlone.ts";
import { documentFile, stemOf } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { useIsBehind } from "../../parts/useSettled.ts";
import { askedOf } from "../../state/madeOf.ts";
import type { Truck } from "../../state/truck.ts";
import { useDoubts } from "../../state/useDoubts.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { chartOfPieces } from "../../work/chartAnswer.ts";
import { useManyAnswers } from "../../work/useAnswer.ts";
import { AxisField } from "./AxisField.tsx";
import { ChartGrid, type Place } from "./ChartGrid.tsx";
import { type AxisTyped, keepAxes, keptAxes, readTypedAxis, startText } from "./chartAxes.ts";
import { askedPoses, keepPoses, keptPoses } from "./chartPoses.ts";
import { PosesField } from "./PosesField.tsx";

/** Cells of the first pieces, and of the others: the first picture comes of two workers at once, as soon from one as from the other. */
const FIRST_PIECE = 3;
const PIECES = [FIRST_PIECE, FIRST_CELLS - FIRST_PIECE, 16, 24] as const;
const PIECE = 40;

/** Cells of a chart on the page; more belong into pieces on the command line. */
const MOST_CELLS = 2500;

/** Two fields, or a list of tires and one of wheels, against each other: what clears of all combinations. */
export function ChartBody({ truck }: { truck: Truck }) {
  const [axes, setAxes] = useState(keptAxes);
  const [poses, setPoses] = useState(keptPoses);
  const subject = useMemo(
    (): AxisSubject => ({ document: askedOf(truck), setup: truck.bolted.setup, file: truck.file }),
    [truck],
  );
  const read = useMemo(() => axes.map((axis) => readTypedAxis(axis, subject)), [axes, subject]);
  const [x, y] = read as [(typeof read)[number], (typeof read)[number]];
  const change = (i: 0 | 1, axis: AxisTyped) => {
    const next: readonly [AxisTyped, AxisTyped] = i === 0 ? [axis, axes[1]] : [axes[0], axis];
    setAxes(next);
    keepAxes(next);
  };
  const mends = read.map((one) => (one.ok ? null : `${one.issues[0]!.value} ${one.issues[0]!.mend}`.trim()));
  const ask = useMemo((): ChartAsk | null => {
    if (!x.ok || !y.ok || x.value.key === y.value.key) return null;
    if (x.value.entries.length * y.value.entries.length > MOST_CELLS) return null;
    return { x: x.value, y: y.value, ...askedPoses(poses, truck.bolted.setup) };
  }, [x, y, poses, truck]);
  const count = x.ok && y.ok ? x.value.entries.length * y.value.entries.length : 0;
  return (
    <div className="chart">
      <div className="chart-form">
        {(["Across", "Down"] as const).map((name, i) => (
          <AxisField
            key={name}
            name={name}
            axis={axes[i]!}
            start={startText(axes[i]!.key, subject)}
            mend={mends[i]!}
            document={subject.document}
            onChange={(axis) => change(i as 0 | 1, axis)}
          />
        ))}
        <PosesField
          setup={truck.bolted.setup}
          poses={poses}
          onChange={(next) => {
            setPoses(next);
            keepPoses(next);
          }}
        />
      </div>
      {x.ok && y.ok && x.value.key === y.value.key && (
        <p role="alert">Both are the same field; choose another.</p>
      )}
      {count > MOST_CELLS && <p role="alert">{tooManyCells(count, MOST_CELLS)}</p>}
      {ask !== null && (
        <AskedChart truck={truck} ask={ask} subject={subject} key={`${ask.x.key} ${ask.y.key}`} />
      )}
    </div>
  );
}

type AskedChartProps = { truck: Truck; ask: ChartAsk; subject: AxisSubject };

function AskedChart({ truck, ask, subject }: AskedChartProps) {
  const format = useFormat();
  const doubtsOf = useDoubts();
  const duplicate = useWorkbench((s) => s.duplicateAsVariant);
  const isBehind = useIsBehind(truck);
  const [place, setPlace] = useState<Place | null>(null);
  const [isStopped, setStopped] = useState(false);
  const [columns, rows] = [ask.x.entries.length, ask.y.entries.length];
  const questions = useMemo(
    () =>
      piecesOf(chartOrder(columns, rows, true)).map((cells) => ({ document: subject.document, ask, cells })),
    [columns, rows, ask, subject],
  );
  const answers = useManyAnswers("chart", truck, questions, !isStopped);
  const chart = useMemo(
    () =>
      chartOfPieces(
        truck.setup,
        { document: subject.document, ask },
        answers.flatMap(({ answer }) => answer ?? []),
      ),
    [answers, ask, subject, truck],
  );
  const done = answers.filter(({ answer }) => answer !== null).length;
  const failure = answers.find((one) => one.failure !== null)?.failure;
  const isBusy = done < answers.length && failure === undefined;
  const at = within(place ?? chart.present ?? { column: 0, row: 0 }, columns, rows);
  const open = ({ column, row }: Place) => {
    if (isBehind) return;
    const entries = [ask.x.entries[column]!, ask.y.entries[row]!];
    const after = [ask.x, ask.y].reduce((on, { key }, i) => {
      const found = axisPlace(key, subject.document, subject.file);
      return found.ok ? entryChange(found.value, entries[i]!, subject.setup).put(on) : on;
    }, subject.document);
    const blocks = [ask.x.key, ask.y.key].map((key) => key.split(".")[0]!);
    duplicate(entries.map(({ label }) => label).join(", "), writtenValues(subject.document, after, blocks));
  };
  if (failure) return <p role="alert">The chart could not be worked out: {failure}</p>;
  return (
    <>
      <p className="chart-of">
        {chartTitle(chart, new Date().toLocaleDateString("en-US", { dateStyle: "long" }))}
      </p>
      <div className="chart-progress">
        {isBusy && (
          <>
            <progress aria-label="Working out the chart" max={answers.length} value={done} />
            <button type="button" className="button" onClick={() => setStopped(!isStopped)}>
              {isStopped ? "Go on" : "Cancel"}
            </button>
          </>
        )}
      </div>
      <ChartGrid
        chart={chart}
        format={format}
        at={at}
        isDoubted={doubtsOf(truck).length > 0}
        onAt={setPlace}
        onOpen={open}
      />
      <p className="chart-cell" role="status">
        {cellSentence(chart, at.column, at.row, format)}
      </p>
      <div className="chart-told" aria-busy={isBusy}>
        {done > 0 && chartSentences(chart, format).map((sentence) => <p key={sentence}>{sentence}</p>)}
      </div>
      <div className="chart-acts">
        <button type="button" className="button" disabled={isBehind} onClick={() => open(at)}>
          Keep this one as a variant
        </button>
        {!isBusy && (
          <SaveMenu
            of="the fit chart"
            files={[
              {
                name: "The fit chart (CSV)",
                file: `${stemOf(truck)}-fit-chart.csv`,
                type: "text/csv",
                make: () => chartCsv(chart),
              },
              documentFile(truck, "chart", "The fit chart", () => chart),
            ]}
          />
        )}
        <button type="button" className="button" disabled={isBusy} onClick={() => printAlone("chart")}>
          Print
        </button>
      </div>
      <p className="chart-hint">{legendSentence(chart, format)}</p>
      <p className="chart-hint">{posesSentence(chart, format)}</p>
      <p className="chart-of">{CAUTIONS}</p>
      <CutShort study="chart" of={answers} />
    </>
  );
}

function within({ column, row }: Place, columns: number, rows: number): Place {
  return { column: Math.min(column, columns - 1), row: Math.min(row, rows - 1) };
}

function piecesOf(order: readonly number[]): readonly (readonly number[])[] {
  const pieces: number[][] = [];
  let from = 0;
  while (from < order.length) {
    const size = PIECES[pieces.length] ?? PIECE;
    pieces.push(order.slice(from, from + size));
    from += size;
  }
  return pieces;
}
