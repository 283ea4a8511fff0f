import { bodyDistances } from "../../src/studies/envelope/bodyDistances.ts";
import { type Envelope, type EnvelopeOptions, envelopeOf } from "../../src/studies/envelope/envelopeOf.ts";
import {
  type EnvelopeRange,
  stanceRange,
  straightRange,
  wholeRange,
} from "../../src/studies/envelope/envelopeRange.ts";
import { proveContainment } from "../../src/studies/envelope/proveContainment.ts";
import type { Model } from "../../src/studies/model/model.ts";
import type { Job } from "./job.ts";

/** mm of travel. */
const STANCE = 80;
/** mm. */
const ALLOWED = 0.35;

/** Envelopes of the left side over each kind of range, what the scene asks for, and the proof. */
export function envelopeJobs(model: Model): Job[] {
  const straight = straightRange(model);
  return [
    envelopeJob("envelope, all travel × all steer", model, wholeRange(model), "fine", 3),
    envelopeJob("envelope, one stance × all steer", model, stanceRange(STANCE), "fine", 5),
    envelopeJob("envelope, straight × all travel", model, straight, "fine", 5),
    envelopeJob("envelope preview, all travel × all steer", model, wholeRange(model), "preview", 8),
    {
      name: "body distances of an envelope",
      each: "envelope",
      size: 1,
      repeats: 5,
      run: sumOfDistances(model, made(model, straight, "fine")),
    },
    {
      name: "containment proven, straight × all travel",
      each: "proof",
      size: 1,
      repeats: 3,
      run: proof(model, straight, made(model, straight, "fine")),
    },
  ];
}

function made(model: Model, range: EnvelopeRange, preset: EnvelopeOptions["preset"] & string): Envelope {
  const result = envelopeOf(model, "left", range, { preset });
  if (!result.ok) throw new Error(`envelopeOf: ${result.reason}`);
  return result.envelope;
}

function envelopeJob(
  name: string,
  model: Model,
  range: EnvelopeRange,
  preset: EnvelopeOptions["preset"] & string,
  repeats: number,
): Job {
  return {
    name,
    each: "envelope",
    size: 1,
    repeats,
    run() {
      const { positions } = made(model, range, preset).mesh;
      return positions.reduce((sum, v) => sum + v, 0);
    },
  };
}

function sumOfDistances(model: Model, { mesh }: Envelope): () => number {
  return () => bodyDistances(model, "left", mesh).reduce((sum, d) => sum + d, 0);
}

function proof(model: Model, range: EnvelopeRange, { mesh }: Envelope): () => number {
  return () => {
    const found = proveContainment(model, "left", range, mesh, ALLOWED);
    if (!found?.proven) throw new Error("proveContainment: not proven");
    return found.cells;
  };
}
