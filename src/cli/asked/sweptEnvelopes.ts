import { type Envelope, type EnvelopeResult, envelopeOf } from "../../studies/envelope/envelopeOf.ts";
import type { EnvelopeRange } from "../../studies/envelope/envelopeRange.ts";
import type { Model } from "../../studies/model/model.ts";
import type { Budget } from "../../studies/numeric/budget.ts";
import { mirroredMesh } from "../../studies/section/placedBody.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { AskedEnvelope } from "./askedEnvelope.ts";
import { InputError } from "./inputError.ts";
import type { Truck } from "./readTruck.ts";
import type { Terminal } from "./terminal.ts";

/**
 * The envelopes of the sides asked for, with progress shown. Where the right side is the mirror image with the
 * steering reversed, and the range is the same both ways, it is not worked out again.
 * @throws InputError when the budget does for no surface @throws TypeError when no pose of the range is in reach: the
 * caller has looked
 */
export function sweptEnvelopes(
  { file, model }: Truck,
  { sides, range }: Pick<AskedEnvelope, "sides" | "range">,
  { budget, asked }: { readonly budget: Budget; readonly asked: string },
  terminal: Terminal,
): readonly Envelope[] {
  const symmetric = model.mirrored && range.steerLow === -range.steerHigh;
  const envelopes: Envelope[] = [];
  for (const [i, side] of sides.entries()) {
    const [other] = envelopes;
    if (other !== undefined && symmetric) {
      envelopes.push({ ...other, side, mesh: mirroredMesh(other.mesh) });
      continue;
    }
    const result = envelopeOfSide(
      model,
      side,
      range,
      budget.share(symmetric ? 1 : sides.length - i),
      terminal,
    );
    if (result.ok) envelopes.push(result.envelope);
    else if (result.reason === "outOfReach")
      throw new TypeError(`no envelope of the ${side} side: out of reach`);
    else
      throw InputError.ofOption(file, "--budget", asked, "is too little for any surface; give more seconds");
  }
  terminal.showProgress?.("");
  return envelopes;
}

function envelopeOfSide(
  model: Model,
  side: Side,
  range: EnvelopeRange,
  budget: Budget,
  { showProgress }: Terminal,
): EnvelopeResult {
  let shown = -1;
  const onProgress = (share: number): void => {
    const percent = Math.floor(100 * share);
    if (percent > shown) showProgress?.(`Sweeping the ${side} side: ${percent}%`);
    shown = Math.max(shown, percent);
  };
  return envelopeOf(model, side, range, { onProgress, budget });
}
