import { ENVELOPE_PRESETS } from "../../studies/envelope/presets.ts";
import { lengthText } from "../../studies/wording/lengthText.ts";
import { heightText } from "../../studies/wording/poseText.ts";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useFormat } from "../state/useFormat.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import type { EnvelopeAsk } from "../work/envelopeMessages.ts";
import { BandKey } from "./BandKey.tsx";
import { ENVELOPES } from "./envelopeNames.ts";
import { showEnvelope, useEnvelope } from "./useEnvelope.ts";

export type EnvelopeStripProps = {
  truck: Truck;
};

const WITHIN = ENVELOPE_PRESETS.preview.outside;

/** mm. Heights this near are the same: the slider was not moved. */
const SAME_HEIGHT = 0.05;

/** How far the envelope on the stage has come, then what its colors mean. */
export function EnvelopeStrip({ truck }: EnvelopeStripProps) {
  const choice = useStage((s) => s.envelope);
  const state = useEnvelope((s) => s);
  const travel = useWorkbench((s) => s.travel);
  const format = useFormat();
  if (choice === null) return null;
  const title = ({ choice, travel }: EnvelopeAsk) =>
    choice === "stance"
      ? `${heightText(travel, truck.setup, format)}, all steering`
      : ENVELOPES.find((one) => one.choice === choice)?.label;
  return (
    <section className="stage-strip" aria-label="Envelope">
      {state.status === "none" && <p role="status">The envelope follows when the change is done.</p>}
      {state.status === "working" && (
        <>
          <p role="status">Sweeping the tires: {title(state.ask)}</p>
          <progress aria-label="Envelope" max={1} value={state.share} />
          <button type="button" className="stage-tool" onClick={() => showEnvelope(null)}>
            Cancel
          </button>
        </>
      )}
      {state.status === "failed" && (
        <p role="alert">The envelope could not be worked out: {state.message}.</p>
      )}
      {state.status === "done" && (
        <>
          <p role="status">
            Envelope, {title(state.drawn)}: distance to the body, within {lengthText(WITHIN, format)}
          </p>
          <BandKey edges={state.drawn.edges} format={format} />
          {choice === "stance" && Math.abs(state.drawn.travel - travel) > SAME_HEIGHT && (
            <button type="button" className="stage-tool" onClick={() => showEnvelope("stance")}>
              Sweep at this height
            </button>
          )}
        </>
      )}
    </section>
  );
}
