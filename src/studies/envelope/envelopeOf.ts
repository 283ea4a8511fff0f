import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { closeSurface } from "./closeSurface.ts";
import { dualSurface } from "./dualSurface.ts";
import type { EnvelopeRange } from "./envelopeRange.ts";
import { EnvelopeTree, type Progress } from "./envelopeTree.ts";
import { fittedSurface } from "./fittedSurface.ts";
import { partPlaces } from "./partPlaces.ts";
import { ENVELOPE_PRESETS, type EnvelopePreset } from "./presets.ts";
import { SectionBends } from "./sectionBends.ts";
import { SectionField } from "./sectionField.ts";
import { SweptDistance } from "./sweptDistance.ts";
import { wheelTableOf } from "./wheelTable.ts";

export interface EnvelopeOptions {
  /** `fine` for files and measuring (default), `preview` to look at. */
  readonly preset?: EnvelopePreset;
  /** Called now and then with the share done, 0 … 1. */
  readonly onProgress?: Progress;
  /** Where it does not do for a fine surface, the answer is a preview. */
  readonly budget?: Budget;
}

/** The space one side's tire and rim sweep over a range of poses. */
export interface Envelope {
  readonly side: Side;
  readonly range: EnvelopeRange;
  /**
   * Its surface: closed, every edge on two triangles, also once equal places are joined in single precision;
   * counterclockwise seen from outside. Vehicle axes, mm.
   */
  readonly mesh: TriangleMesh;
  /** mm. The ring lies inside the surface at every pose of the range, but for this much at most. */
  readonly inside: number;
  /** mm. No point of the surface is farther than this from where the ring can be. */
  readonly outside: number;
  /** The budget did not do for the surface asked for: `inside` and `outside` say what is kept. */
  readonly cutShort?: true;
  /** What it cost: poses tabled, cubes of the tree. */
  readonly cost: { readonly poses: number; readonly cubes: number };
}

export type EnvelopeResult =
  | { readonly ok: true; readonly envelope: Envelope }
  | { readonly ok: false; readonly reason: "budgetSpent" | "outOfReach" };

/** All but a fifth of a budget is for the fine surface; a preview takes a fifteenth of its time. */
const FINE_PART = 1.25;

/** mm. Past the ring's own size, how far from the section distances are tabled. */
const FIELD_REACH = 250;

/**
 * The surface around everything that one side's ring touches over a continuous range of travel and steer,
 * holes included (the barrel's, where it stays open). Method and tolerances: `public/docs/envelope.md`.
 * Where a joint runs out of reach the range ends with it. Vehicle axes, mm.
 */
export function envelopeOf(
  model: Model,
  side: Side,
  range: EnvelopeRange,
  options: EnvelopeOptions = {},
): EnvelopeResult {
  const { preset = "fine", onProgress = () => {}, budget = Budget.endless() } = options;
  if (preset === "preview") return sweptBy("preview", model, side, range, onProgress, budget);
  const fine = sweptBy("fine", model, side, range, onProgress, budget.share(FINE_PART));
  if (fine.ok || fine.reason === "outOfReach") return fine;
  const coarse = sweptBy("preview", model, side, range, onProgress, budget.share(1));
  return coarse.ok ? { ok: true, envelope: { ...coarse.envelope, cutShort: true } } : coarse;
}

function sweptBy(
  name: EnvelopePreset,
  model: Model,
  side: Side,
  range: EnvelopeRange,
  progress: Progress,
  budget: Budget,
): EnvelopeResult {
  const preset = ENVELOPE_PRESETS[name];
  const table = wheelTableOf(model, side, range, preset.spacing);
  if (table === null) return { ok: false, reason: "outOfReach" };
  const field = new SectionField(model.ring, preset.sectionStep, FIELD_REACH);
  const bends = new SectionBends(field, 0.5 * preset.least);
  const swept = new SweptDistance(table, field, bends, model.ring.ballRadius, preset.worth);
  const tree = new EnvelopeTree(swept, model.ring.ballRadius, preset, progress, budget);
  if (!tree.build()) return { ok: false, reason: "budgetSpent" };
  const { offset, fit } = preset;
  const surface = fit === null ? dualSurface(tree, offset) : fittedSurface(tree, offset, fit);
  if (surface === null) return { ok: false, reason: "budgetSpent" };
  const mesh = closeSurface(surface);
  partPlaces(mesh);
  progress(1);
  return {
    ok: true,
    envelope: {
      side,
      range,
      mesh: side === "left" ? { positions: mesh.positions, triangles: mesh.triangles } : mirrored(mesh),
      inside: preset.inside,
      outside: preset.outside,
      cost: { poses: table.rows * table.columns, cubes: tree.count },
    },
  };
}

/** The mirror image across the center plane; triangles turn about, so that they face outward again. */
function mirrored({ positions, triangles }: TriangleMesh): TriangleMesh {
  const turned = triangles.slice();
  for (let i = 0; i < turned.length; i += 3) {
    turned[i + 1] = triangles[i + 2]!;
    turned[i + 2] = triangles[i + 1]!;
  }
  return { positions: positions.map((v, i) => (i % 3 === 1 ? -v : v)), triangles: turned };
}
