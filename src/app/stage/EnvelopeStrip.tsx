import { ENVELOPE_PRESETS } from "../../studies/envelope/presets.ts";
import { lengthText } from "../../studies/wording/lengths.ts";
import { heightText } from "../../studies/wording/poseWords.ts";
import { CutShort } from "../parts/CutShort.tsx";
import { shapeFile } from "../parts/reportFiles.ts";
import { SaveMenu } from "../parts/SaveMenu.tsx";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
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
  const asked = useStage((s) => s.envelope);
  const envelope = useEnvelope(truck);
  const travel = useWorkbench((s) => s.travel);
  const format = useFormat();
  if (asked === null) return null;
  const title =
    asked.choice === "stance"
      ? `${heightText(asked.travel, truck.setup, format)}, all steering`
      : ENVELOPES.find(({ choice }) => choice === asked.choice)?.label;
  const drawn = envelope?.answer;
  const isFirst = envelope !== null && !drawn && !envelope.isCut && envelope.failure === null;
  return (
    <section className="stage-strip" aria-label="Envelope">
      {envelope === null && <p role="status">The envelope follows when the change is done.</p>}
      {isFirst && (
        <>
          <p role="status">Sweeping the tires: {title}</p>
          <progress aria-label="Envelope" max={1} value={envelope.underWay?.share ?? 0} />
          <button type="button" className="stage-tool" onClick={() => showEnvelope(null)}>
            Cancel
          </button>
        </>
      )}
      {envelope && !drawn && envelope.failure !== null && (
        <p role="alert">The envelope could not be worked out: {envelope.failure}.</p>
      )}
      {envelope && <CutShort study="noEnvelope" of={[envelope]} />}
      {drawn && (
        <>
          <p role="status">
            Envelope, {title}: distance to the body, within {lengthText(WITHIN, format)}
          </p>
          <SaveMenu
            of="the swept space"
            files={(["stl", "glb"] as const).map((format) =>
              shapeFile(truck, { format, choice: asked.choice, travel: asked.travel, plane: null }),
            )}
          />
          <BandKey edges={drawn.edges} format={format} />
          {asked.choice === "stance" && Math.abs(asked.travel - travel) > SAME_HEIGHT && (
            <button type="button" className="stage-tool" onClick={() => showEnvelope("stance")}>
              Sweep at this height
            </button>
          )}
        </>
      )}
    </section>
  );
}
