import { type Envelope, envelopeOf } from "../studies/envelope/envelopeOf.ts";
import type { EnvelopeRange } from "../studies/envelope/envelopeRange.ts";
import type { Model } from "../studies/model.ts";
import { mirroredMesh } from "../studies/section/placedBody.ts";
import type { Side } from "../suspension/frontEnd.ts";
import type { Terminal } from "./terminal.ts";

/**
 * The envelopes of the sides asked for, with progress shown. Where the right side is the mirror image with the
 * steering reversed, and the range is the same both ways, it is not worked out again.
 * @throws TypeError when no pose of the range is in reach: the caller has looked
 */
export function sweptEnvelopes(
  model: Model,
  sides: readonly Side[],
  range: EnvelopeRange,
  terminal: Terminal,
): readonly Envelope[] {
  const symmetric = model.mirrored && range.steerLow === -range.steerHigh;
  const envelopes: Envelope[] = [];
  for (const side of sides) {
    const [other] = envelopes;
    envelopes.push(
      other !== undefined && symmetric
        ? { ...other, side, mesh: mirroredMesh(other.mesh) }
        : envelopeOfSide(model, side, range, terminal),
    );
  }
  terminal.showProgress?.("");
  return envelopes;
}

function envelopeOfSide(
  model: Model,
  side: Side,
  range: EnvelopeRange,
  { showProgress }: Terminal,
): Envelope {
  let shown = -1;
  const onProgress = (share: number): boolean => {
    const percent = Math.floor(100 * share);
    if (percent > shown) showProgress?.(`Sweeping the ${side} side: ${percent}%`);
    shown = Math.max(shown, percent);
    return false;
  };
  const result = envelopeOf(model, side, range, { onProgress });
  if (!result.ok) throw new TypeError(`envelope of the ${side} side: ${result.reason}`);
  return result.envelope;
}
