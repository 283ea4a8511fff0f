import { useMemo, useState } from "react";
import { writtenValues } from "../../../setup/editing/writtenValues.ts";
import { fieldsToVary } from "../../../studies/window/fieldsToVary.ts";
import { fieldName } from "../../../studies/wording/fieldName.ts";
import { kindsOf } from "../../clear/plots/alignmentPlots.ts";
import { Plot } from "../../clear/plots/Plot.tsx";
import { bringInSight } from "../../parts/bringInSight.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import { standingText } from "../../parts/standing.tsx";
import { useIsBehind } from "../../parts/useSettled.ts";
import { shownOf } from "../../state/madeOf.ts";
import type { Truck } from "../../state/truck.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { useAnswers } from "../../work/useAnswer.ts";
import { FanForm } from "./FanForm.tsx";
import { FanTable } from "./FanTable.tsx";
import { apartText, type FanStep, fanCount, fanPlot, fanSteps } from "./fan.ts";
import { fieldEnd, fieldStart } from "./fieldEnds.ts";
import { truckOfDocument } from "./useVariantTrucks.ts";
import { workOn } from "./workedOn.ts";

/** One field over a range: a curve and a worst gap for each value, and any of them kept as a variant. */
export function FanPanel({ truck }: { truck: Truck }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details
      className="fan fold"
      open={isOpen}
      onToggle={({ currentTarget }) => {
        if (currentTarget.open && !isOpen) bringInSight(currentTarget);
        setOpen(currentTarget.open);
      }}
    >
      <summary>
        <h2 className="label">Fan a field</h2>
        <span className="fold-note">one field over a range: a curve and a worst gap for each value</span>
      </summary>
      {isOpen && <Fan truck={truck} />}
    </details>
  );
}

const NO_STEPS: readonly FanStep[] = [];

function Fan({ truck }: { truck: Truck }) {
  const document = shownOf(truck);
  const isBehind = useIsBehind(truck);
  const file = useWorkbench((s) => s.file);
  const meshes = useWorkbench((s) => s.meshes);
  const isAligned = useWorkbench((s) => s.isAligned);
  const travel = useWorkbench((s) => s.travel);
  const setTravel = useWorkbench((s) => s.setTravel);
  const duplicate = useWorkbench((s) => s.duplicateAsVariant);
  const format = useFormat();
  const [key, setKey] = useState("knuckle.pinAngle");
  const [ends, setEnds] = useState<readonly [from: string, to: string] | null>(null);
  const [count, setCount] = useState("5");
  const [plotId, setPlotId] = useState("camber");

  const { setup } = truck.bolted;
  const fields = useMemo(() => fieldsToVary(document, setup, truck.file), [document, setup, truck.file]);
  const field = fields.find((one) => one.key === key) ?? fields[0]!;
  const label = fieldName(field.path, document);
  const [from, to] = ends ?? fieldStart(field, format);
  const low = fieldEnd(field, from, format.units);
  const high = fieldEnd(field, to, format.units);
  const values = fanCount(count);
  const isSpan = low !== null && high !== null && low !== high;
  const isReady = isSpan && values !== null;
  const steps = useMemo(() => {
    if (!isReady) return NO_STEPS;
    return fanSteps(document, field, [low, high], values, format, (made) =>
      truckOfDocument(made as TypedDocument, file, meshes, isAligned),
    );
  }, [isReady, document, field, low, high, values, format, file, meshes, isAligned]);
  const trucks = useMemo(() => steps.flatMap((step) => (step.truck ? [step.truck] : [])), [steps]);
  const checks = useAnswers("check", trucks);
  const plot = useMemo(() => fanPlot(steps, plotId), [steps, plotId]);
  const standing = standingText(trucks[0] ?? truck, isAligned);

  return (
    <>
      <FanForm
        fields={fields}
        field={field}
        document={document}
        from={from}
        to={to}
        isRead={[low !== null, high !== null]}
        count={count}
        apart={isReady ? apartText(field, [low, high], values, format) : null}
        plots={kindsOf(truck)}
        plotId={plotId}
        onField={(next) => {
          setKey(next);
          setEnds(null);
          workOn(next);
        }}
        onEnds={(typed) => {
          setEnds(typed);
          workOn(field.key);
        }}
        onCount={(typed) => {
          setCount(typed);
          workOn(field.key);
        }}
        onPlot={setPlotId}
      />
      {isReady && (
        <div className="fan-answers">
          {standing !== null && <p className="fan-standing">Each value {standing}.</p>}
          {plot && <Plot spec={plot} at={travel} format={format} onGo={setTravel} />}
          <CutShort study="nearest" of={checks} />
          <FanTable
            label={label}
            steps={steps}
            checks={steps.map((step) => (step.truck ? checks[trucks.indexOf(step.truck)]! : null))}
            format={format}
            isBehind={isBehind}
            onKeep={(step) =>
              duplicate(
                `${label.toLowerCase()} ${step.text}`,
                writtenValues(document, step.document, [String(field.path[0])]),
              )
            }
          />
        </div>
      )}
    </>
  );
}
