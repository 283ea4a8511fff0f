/// <reference lib="webworker" />
import { formatIssue } from "../../setup/reading/formatIssue.ts";
import { modelAsked } from "../../studies/alignment/modelAsked.ts";
import { lowestTravels } from "../../studies/map/lowestTravels.ts";
import { steerLimits } from "../../studies/map/steerLimits.ts";
import type { Model } from "../../studies/model/model.ts";
import { drawnMapOf } from "./drawnMap.ts";
import type { MapAnswer, MapRequest } from "./mapMessages.ts";
import { pageBudget } from "./pageBudget.ts";

/** The truck asked about: one at a time. */
let shown: { readonly truckId: number; readonly model: Model } | null = null;

addEventListener("message", ({ data }: MessageEvent<MapRequest>) => {
  let answer: MapAnswer | null;
  try {
    answer = answerTo(data);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    answer = { kind: "failed", truckId: data.truckId, message };
  }
  if (answer !== null) postMessage(answer);
});

function answerTo(request: MapRequest): MapAnswer | null {
  const { truckId } = request;
  if (request.kind === "map") {
    const built = modelAsked(request);
    if (!built.ok) return { kind: "failed", truckId, message: built.issues.map(formatIssue).join("; ") };
    shown = { truckId, model: built.model };
    return { kind: "map", truckId, drawn: drawnMapOf(built.model, pageBudget()) };
  }
  // Of a truck that is gone nobody waits for an answer.
  if (shown?.truckId !== truckId) return null;
  const { travel, steer } = request;
  const steering = steerLimits(shown.model, [travel], pageBudget())[0];
  const lowering = lowestTravels(shown.model, [steer], pageBudget())[0];
  if (steering === undefined || lowering === undefined) return null;
  return { kind: "limits", truckId, limits: { travel, steer, steering, lowering } };
}
