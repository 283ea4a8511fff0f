/// <reference lib="webworker" />
import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { formatIssue } from "../../setup/reading/formatIssue.ts";
import { modelAsked } from "../../studies/alignment/modelAsked.ts";
import type { Model } from "../../studies/model/model.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { drawnSectionOf } from "./drawnSection.ts";
import type { SectionAnswer, SectionRequest } from "./sectionMessages.ts";

let shown: { readonly model: Model } | { readonly fault: string } = { fault: "no truck was given" };
let envelopes: readonly { readonly side: Side; readonly mesh: TriangleMesh }[] = [];

addEventListener("message", ({ data }: MessageEvent<SectionRequest>) => {
  if (data.kind === "truck") {
    const built = modelAsked(data);
    shown = built.ok ? { model: built.model } : { fault: built.issues.map(formatIssue).join("; ") };
  } else if (data.kind === "envelope") {
    envelopes = data.sides.map(({ side, positions, triangles }) => ({
      side,
      mesh: { positions: Float64Array.from(positions), triangles },
    }));
  } else postMessage(answerTo(data));
});

function answerTo({ id, cut }: SectionRequest & { readonly kind: "cut" }): SectionAnswer {
  if ("fault" in shown) return { kind: "failed", id, message: shown.fault };
  try {
    return { kind: "cut", id, drawn: drawnSectionOf(shown.model, envelopes, cut) };
  } catch (error) {
    return { kind: "failed", id, message: error instanceof Error ? error.message : String(error) };
  }
}
