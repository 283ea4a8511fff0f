import { dxfText } from "../../files/writeDxf.ts";
import { glbBytes } from "../../files/writeGlb.ts";
import { stlBytes } from "../../files/writeStl.ts";
import { svgText } from "../../files/writeSvg.ts";
import { ENVELOPE_CAUTIONS, envelopeAbout, homePose } from "../../studies/documents/envelopeAbout.ts";
import { sectionSheet } from "../../studies/documents/sectionSheet.ts";
import { type Envelope, envelopeOf } from "../../studies/envelope/envelopeOf.ts";
import type { Model } from "../../studies/model/model.ts";
import type { Budget } from "../../studies/numeric/budget.ts";
import { envelopeSection } from "../../studies/section/envelopeSection.ts";
import type { SectionPlane } from "../../studies/section/outline.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { EnvelopeChoice } from "../state/stageSettings.ts";
import { envelopeRange } from "./drawnEnvelope.ts";

/** The swept space as a file: its surface, or it and the body cut by a plane. */
export interface ShapeAsk {
  readonly of: "shape";
  readonly format: "stl" | "glb" | "dxf" | "svg";
  readonly choice: EnvelopeChoice;
  /** mm; the height of `stance`. */
  readonly travel: number;
  /** Of `dxf` and `svg`. */
  readonly plane: SectionPlane | null;
}

/**
 * The very bytes that `envelope` writes of both sides. @param onProgress the share done, 0 … 1
 * @throws Error why there are none
 */
export function shapeBytes(
  model: Model,
  ask: ShapeAsk,
  budget: Budget,
  onProgress: (share: number) => void,
): Uint8Array {
  const range = envelopeRange(model, ask);
  const envelopes = bothSwept(model, ask, budget, onProgress);
  const about = envelopeAbout(model, range);
  const meshes = envelopes.map(({ side, mesh }) => ({ name: `envelope ${side}`, mesh }));
  if (ask.format === "stl")
    return stlBytes(
      envelopes.map(({ mesh }) => mesh),
      about,
    );
  if (ask.format === "glb") return glbBytes(meshes, { about, cautions: ENVELOPE_CAUTIONS });
  const pose = homePose(model, range);
  const section = envelopeSection(model, envelopes, ask.plane!, pose);
  if (!section.figures.some(({ kind }) => kind === "envelope"))
    throw new Error("this plane misses the swept space");
  const drawn = sectionSheet(section, range, pose, model);
  return new TextEncoder().encode(ask.format === "dxf" ? dxfText(drawn) : svgText(drawn));
}

/** What was swept last of a truck: the next file is mostly of the same. */
const kept = new WeakMap<Model, { readonly key: string; readonly envelopes: readonly Envelope[] }>();

/** Both sides' envelopes, of which fine ones are kept. */
function bothSwept(
  model: Model,
  ask: ShapeAsk,
  budget: Budget,
  onProgress: (share: number) => void,
): readonly Envelope[] {
  const key = JSON.stringify(envelopeRange(model, ask));
  const known = kept.get(model);
  if (known?.key === key) return known.envelopes;
  const envelopes = (["left", "right"] as const).map((side, i) =>
    swept(model, side, ask, budget.share(2 - i), (share) => onProgress(0.5 * (i + share))),
  );
  if (envelopes.every(({ cutShort }) => !cutShort)) kept.set(model, { key, envelopes });
  return envelopes;
}

function swept(
  model: Model,
  side: Side,
  ask: ShapeAsk,
  budget: Budget,
  onProgress: (share: number) => void,
): Envelope {
  const found = envelopeOf(model, side, envelopeRange(model, ask), { budget, onProgress });
  if (found.ok) return found.envelope;
  throw new Error(
    found.reason === "outOfReach"
      ? "no pose of this range can be reached"
      : "its surface was not found in the time allowed",
  );
}
