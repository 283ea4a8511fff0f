import { useMemo, useState } from "react";
import type { SetupField } from "../../../setup/fields/setupField.ts";
import { type KeyPath, keyText } from "../../../setup/types/keyPath.ts";
import { Plot } from "../../clear/plots/Plot.tsx";
import { CutShort } from "../../parts/CutShort.tsx";
import { standingText } from "../../parts/standing.tsx";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf, type TypedDocument } from "../../state/typedDocument.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { useAnswers } from "../../work/useAnswer.ts";
import { FanForm } from "./FanForm.tsx";
import { FanTable } from "./FanTable.tsx";
import { type FanStep, fanDocument, fanFields, fanValues, fileValue } from "./fan.ts";
import { fanEnd, fanEndText, fanStart } from "./fanEnds.ts";
import { fanPlot } from "./fanPlot.ts";
import { truckOfDocument } from "./otherTrucks.ts";

/** One field over a range: a curve and a worst gap for each value, and any of them kept as a variant. */
export function FanPanel({ truck }: { truck: Truck }) {
  const document = useWorkbench((s) => s.document);
  const variant = useWorkbench((s) => s.variant);
  const file = useWorkbench((s) => s.file);
  const meshes = useWorkbench((s) => s.meshes);
  const isAligned = useWorkbench((s) => s.isAligned);
  const travel = useWorkbench((s) => s.travel);
  const setTravel = useWorkbench((s) => s.setTravel);
  const duplicate = useWorkbench((s) => s.duplicateAsVariant);
  const format = useFormat();
  const [isOpen, setOpen] = useState(false);
  const [key, setKey] = useState("knuckle.pinAngle");
  const [ends, setEnds] = useState<readonly [from: string, to: string] | null>(null);
  const [count, setCount] = useState(5);
  const [plotId, setPlotId] = useState("camber");

  const fields = useMemo(() => fanFields(document), [document]);
  const field = fields.find(({ pattern }) => keyText(pattern) === key) ?? fields[0];
  const [from, to] = ends ?? (field ? fanStart(field, truck.setup, format) : ["", ""]);
  const low = field ? fanEnd(field, from, format.units) : null;
  const high = field ? fanEnd(field, to, format.units) : null;
  const isReady =
    isOpen && document !== null && field !== undefined && low !== null && high !== null && low !== high;
  const steps = useMemo((): FanStep[] => {
    if (!isReady) return [];
    return fanValues(low, high, count).map((value) => stepOf(document, field, value));

    function stepOf(of: TypedDocument, at: SetupField, value: number): FanStep {
      const held = fileValue(at, value, fileUnitsOf(of));
      const made = truckOfDocument(
        fanDocument(of, variant, at.pattern as KeyPath, held),
        file,
        meshes,
        isAligned,
      );
      return { value: held, text: fanEndText(at, value, format), truck: made };
    }
  }, [isReady, document, variant, field, low, high, count, file, meshes, isAligned, format]);
  const trucks = useMemo(() => steps.flatMap((step) => (step.truck ? [step.truck] : [])), [steps]);
  const checks = useAnswers("check", trucks);
  const plot = useMemo(() => fanPlot(steps, plotId), [steps, plotId]);

  const standing = standingText(trucks[0] ?? truck, isAligned);

  return (
    <details className="fan" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className="label">Fan: one field over a range, a curve and a worst gap for each value</summary>
      <FanForm
        fields={fields}
        field={field}
        from={from}
        to={to}
        isRead={[low !== null, high !== null]}
        count={count}
        plotId={plotId}
        onField={(next) => {
          setKey(next);
          setEnds(null);
        }}
        onEnds={setEnds}
        onCount={setCount}
        onPlot={setPlotId}
      />
      {isReady && (
        <div className="fan-answers">
          {standing !== null && <p className="fan-standing">Each value {standing}.</p>}
          {plot && <Plot spec={plot} at={travel} format={format} onGo={setTravel} />}
          <CutShort study="nearest" of={checks} />
          <FanTable
            label={field.label}
            steps={steps}
            checks={steps.map((step) => (step.truck ? checks[trucks.indexOf(step.truck)]! : null))}
            format={format}
            onKeep={(step) =>
              duplicate(`${field.label.toLowerCase()} ${step.text}`, [
                { path: field.pattern as KeyPath, value: step.value },
              ])
            }
          />
        </div>
      )}
    </details>
  );
}
