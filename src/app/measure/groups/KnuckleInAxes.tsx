import { useEffect, useId, useMemo, useState } from "react";
import type { Vec3 } from "../../../geometry/vec.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { knuckleInTruck } from "../../../studies/measure/knuckleInTruck.ts";
import { formatLength, type LengthFormat } from "../../../units/formatLength.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import { fieldDraft } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf, withDraft } from "../../state/typedDocument.ts";
import { commitTyped, dropTyped, type } from "../../state/typing.ts";
import { truckOnBoard, useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { typingVisit } from "../fields/typingVisit.ts";
import { ZERO_WAYS, ZERO_WORDS, ZeroSketch } from "../sketches/zeroSketches.tsx";

export type KnuckleInAxesProps = { truck: Truck };

const AXES = ["x", "y", "z"] as const;

/**
 * The knuckle once more, by points in the truck's axes as a tape reads them: what is changed here changes the knuckle's own
 * numbers above, and the other way round.
 */
export function KnuckleInAxes({ truck: shown }: KnuckleInAxesProps) {
  const format = useFormat();
  const truck = useWorkbench((s) => s.truck) ?? shown;
  const there = useMemo(() => pointsOf(truck), [truck]);
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
                  <small className="points-way">{ZERO_WAYS.truck[axis]}</small>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <PointRow
              label="hub face, its middle"
              point={there.hubFace}
              format={format}
              onMove={(axis, mm) => {
                const now = pointsOf(truckOnBoard(truck)) ?? there;
                const { hubFace, pinHeight, pinLead } = now.hubFaceAt(moved(now.hubFace, axis, mm));
                return { hubFace, pinHeight, pinLead };
              }}
            />
            <PointRow
              label="outer tie rod end"
              point={there.tieRodEnd}
              format={format}
              onMove={(axis, mm) => {
                const now = pointsOf(truckOnBoard(truck)) ?? there;
                return { steeringArm: now.steeringArmAt(moved(now.tieRodEnd, axis, mm)) };
              }}
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
  /** The knuckle's numbers for another coordinate of the point, mm. */
  onMove: (axis: number, mm: number) => Readonly<Record<string, number | Vec3>>;
};

function pointsOf({ bolted: { frontEnd, setup } }: Truck) {
  return knuckleInTruck(frontEnd, setup.knuckle.pinAngle);
}

function moved(point: Vec3, axis: number, mm: number): Vec3 {
  return point.map((old, k) => (k === axis ? mm : old)) as unknown as Vec3;
}

function PointRow({ label, point, format, onMove }: PointRowProps) {
  const id = useId();
  // No field of the file: what does not read is kept beside it, as of any other field.
  const path: KeyPath = ["knuckle", `${label} in the truck's axes`];
  const faults = useWorkbench((s) =>
    AXES.map((axis) => fieldDraft(s, [...path, axis])?.mend ?? "").join("\n"),
  ).split("\n");
  const axis = faults.findIndex((mend) => mend !== "");
  return (
    <>
      <tr>
        <th scope="row">{label}</th>
        {AXES.map((name, i) => (
          <td key={name} data-field={[...path, name].join(".")}>
            <Cell
              path={[...path, name]}
              label={`${label} in the truck's axes, ${name}`}
              shown={bareLength(point[i]!, format)}
              format={format}
              faultId={id}
              onRead={(mm) => put(onMove(i, mm))}
            />
          </td>
        ))}
      </tr>
      {axis >= 0 && (
        <tr>
          <td colSpan={4} className="points-fault">
            <p id={id} className="fault">
              <span aria-hidden="true">✕ </span>
              {AXES[axis]}: {faults[axis]}. It stays as it was until then.
            </p>
          </td>
        </tr>
      )}
    </>
  );
}

type CellProps = {
  /** Under which what is typed is kept. */
  path: KeyPath;
  label: string;
  /** What holds now. */
  shown: string;
  format: LengthFormat;
  faultId: string;
  onRead: (mm: number) => void;
};

/** One coordinate: each key is kept, and takes effect as soon as no other has come for a moment. */
function Cell({ path, label, shown, format, faultId, onRead }: CellProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const [visit] = useState(typingVisit);
  const draft = useWorkbench((s) => fieldDraft(s, path));
  const take = (text: string) => {
    const read = parseLength(text, format.units);
    visit.touch();
    if (read.ok) {
      workbench.getState().discardDraft(path);
      onRead(read.mm);
    } else keepDraft(path, text, read.mend);
  };
  // Typed before the page was left: taken over now, or its own mend is told.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when it comes
  useEffect(() => {
    if (draft) take(draft.text);
    return () => {
      commitTyped();
      visit.end();
    };
  }, []);
  const settle = () => {
    commitTyped();
    visit.end();
    setTyped(null);
  };
  return (
    <input
      className="entry"
      type="text"
      autoComplete="off"
      spellCheck={false}
      aria-label={label}
      aria-invalid={draft !== null}
      aria-describedby={draft ? faultId : undefined}
      value={typed ?? draft?.text ?? shown}
      onChange={({ target: { value } }) => {
        setTyped(value);
        type({ path, text: value, isOptional: false }, () => take(value));
      }}
      onBlur={settle}
      onKeyDown={(event) => {
        if (event.key === "Enter") settle();
        if (event.key !== "Escape") return;
        dropTyped();
        if (!visit.cancel()) workbench.getState().discardDraft(path);
        setTyped(null);
      }}
    />
  );
}

/** Keeps a text that does not read, with its mend. */
function keepDraft(path: KeyPath, text: string, mend: string): void {
  workbench.setState(({ drafts, variant }) => ({ drafts: withDraft(drafts, { variant, path, text, mend }) }));
}

function bareLength(mm: number, format: LengthFormat): string {
  return formatLength(mm, format).replace(/ (in|mm)$/, "");
}

/** Writes the knuckle's numbers. */
function put(numbers: Readonly<Record<string, number | Vec3>>): void {
  const { document, editField } = workbench.getState();
  const units = fileUnitsOf(document);
  const text = (mm: number) => plainLengthText(Math.round(mm * 1e4) / 1e4, units);
  for (const [key, value] of Object.entries(numbers))
    editField(["knuckle", key], typeof value === "number" ? text(value) : value.map(text));
}
