import { UNBUILT_WAYS } from "../../../studies/wording/drawingWords.ts";
import { NextStep } from "../../parts/NextStep.tsx";
import { startAndDraw } from "./fetchAndStart.ts";

export type NextDrawingProps = {
  /** The setup says what the knuckle is made of. */
  isBuilt: boolean;
  /** Without the words beside the button. Default false. */
  isBare?: boolean;
};

/** The way on from an order: to its drawings; of a usual knuckle where nothing says yet what it is made of. */
export function NextDrawing({ isBuilt, isBare = false }: NextDrawingProps) {
  if (isBuilt) return <NextStep to="drawings" isBare={isBare} />;
  const button = (
    <button type="button" className="button" onClick={() => void startAndDraw()}>
      {UNBUILT_WAYS.next} <span aria-hidden="true">›</span>
    </button>
  );
  return isBare ? (
    button
  ) : (
    <p className="next-step">
      {button} {UNBUILT_WAYS.note}
    </p>
  );
}
