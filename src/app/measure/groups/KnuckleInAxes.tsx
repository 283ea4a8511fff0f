import { useId, useMemo, useState } from "react";
import type { Vec3 } from "../../../geometry/vec.ts";
import { knuckleInTruck } from "../../../studies/measure/knuckleInTruck.ts";
import { formatLength, type LengthFormat } from "../../../units/formatLength.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { ZERO_WORDS, ZeroSketch } from "../sketches/zeroSketches.tsx";

export type KnuckleInAxesProps = { truck: Truck };

const AXES = ["x", "y", "z"] as const;

/**
 * The knuckle once more, by points in the truck's axes as a tape reads them: what is changed here changes the knuckle's own
 * numbers above, and the other way round.
 */
export function KnuckleInAxes({ truck }: KnuckleInAxesProps) {
  const format = useFormat();
  const { setup, frontEnd } = truck.bolted;
  const there = useMemo(() => knuckleInTruck(frontEnd, setup.knuckle.pinAngle), [frontEnd, setup]);
  if (there === null) return null;
  return (
    <details className="in-axes">
      <summary>The same by points in the truck's axes</summary>
      <p className="part-note">
        Left side, as measured, wheels straight ahead. The pin angle, the ball joints and the toe stay as they
        are.
      </p>
      <div className="points">
        <table>
          <caption className="sr-only">The knuckle by points in the truck's axes</caption>
          <thead>
            <tr>
              <th scope="col">point</th>
              {AXES.map((axis) => (
                <th key={axis} scope="col">
                  {axis}
                  <small> {format.units}</small>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <PointRow
              label="hub face, its middle"
              point={there.hubFace}
              format={format}
              onMove={(point) => {
                const { hubFace, pinHeight, pinLead } = there.hubFaceAt(point);
                return { hubFace, pinHeight, pinLead };
              }}
            />
            <PointRow
              label="outer tie rod end"
              point={there.tieRodEnd}
              format={format}
              onMove={(point) => ({ steeringArm: there.steeringArmAt(point) })}
            />
          </tbody>
        </table>
      </div>
      <ZeroSketch zero="truck" />
      <p className="part-note">{ZERO_WORDS.truck}</p>
    </details>
  );
}

type PointRowProps = {
  label: string;
  point: Vec3;
  format: LengthFormat;
  /** The knuckle's numbers for another place of the point, mm. */
  onMove: (point: Vec3) => Readonly<Record<string, number | Vec3>>;
};

function PointRow({ label, point, format, onMove }: PointRowProps) {
  const id = useId();
  /** What is typed and not taken over yet, by axis. */
  const [typed, setTyped] = useState<readonly (string | null)[]>([null, null, null]);
  const [fault, setFault] = useState<{ readonly axis: number; readonly mend: string } | null>(null);
  const setCell = (axis: number, text: string | null) =>
    setTyped(typed.map((old, i) => (i === axis ? text : old)));
  const takeOver = (axis: number) => {
    const text = typed[axis];
    if (text === null || text === undefined) return;
    const read = parseLength(text, format.units);
    if (!read.ok) {
      setFault({ axis, mend: read.mend });
      return;
    }
    setFault(null);
    setCell(axis, null);
    put(onMove(point.map((old, i) => (i === axis ? read.mm : old)) as unknown as Vec3));
  };
  return (
    <>
      <tr>
        <th scope="row">{label}</th>
        {AXES.map((name, axis) => (
          <td key={name}>
            <input
              className="entry"
              type="text"
              autoComplete="off"
              spellCheck={false}
              aria-label={`${label} in the truck's axes, ${name}`}
              aria-invalid={fault?.axis === axis}
              aria-describedby={fault?.axis === axis ? id : undefined}
              value={typed[axis] ?? bareLength(point[axis]!, format)}
              onChange={(event) => setCell(axis, event.target.value)}
              onBlur={() => takeOver(axis)}
              onKeyDown={(event) => {
                if (event.key === "Enter") takeOver(axis);
                if (event.key !== "Escape") return;
                setCell(axis, null);
                setFault(null);
              }}
            />
          </td>
        ))}
      </tr>
      {fault && (
        <tr>
          <td colSpan={4} className="points-fault">
            <p id={id} className="fault">
              <span aria-hidden="true">✕ </span>
              {AXES[fault.axis]}: {fault.mend}. It stays as it was until then.
            </p>
          </td>
        </tr>
      )}
    </>
  );
}

function bareLength(mm: number, format: LengthFormat): string {
  return formatLength(mm, format).replace(/ (in|mm)$/, "");
}

/** Writes the knuckle's numbers, as one step. */
function put(numbers: Readonly<Record<string, number | Vec3>>): void {
  const { document, beginGesture, editField, endGesture } = workbench.getState();
  const units = fileUnitsOf(document);
  const text = (mm: number) => plainLengthText(Math.round(mm * 1e4) / 1e4, units);
  beginGesture();
  for (const [key, value] of Object.entries(numbers))
    editField(["knuckle", key], typeof value === "number" ? text(value) : value.map(text));
  endGesture();
}
