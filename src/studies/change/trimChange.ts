import { modelAsked } from "../alignment/modelAsked.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { Touches } from "../odds/touches.ts";
import { type CheckReport, checkClearance } from "../reports/check.ts";
import { TRIM_MORE, trimOf } from "../trim/trimOf.ts";
import type { LeftPart } from "../trim/trimTypes.ts";
import type { TruckToVary } from "../window/truckOverField.ts";
import type { FoundChange, Smaller } from "./changeTypes.ts";

/** Of a budget this part is for the region, and for the check of what is left. */
const REGION_PART = 2;

/** mm. An edge left nearer by this is proven to be too near. */
const STEP = 1;

const SEARCHED: Smaller = { rank: "searched" };

/**
 * The body part that alone is too near, cut back; null where anything else is too near too. Of a path what is left is checked as
 * any truck is, and it is null where that does not clear. Of a box nothing else is told than how deep the cut goes under its face,
 * and of a scan by how much it is too near: what is left of these is not checked.
 */
export function trimChange(
  { parts }: CheckReport,
  model: Model,
  { file, isAligned }: TruckToVary,
  budget: Budget,
): FoundChange | null {
  const near = parts.filter(({ verdict }) => verdict !== "clear");
  const names = new Set(near.map(({ part }) => part));
  const [part] = names;
  const { allowance, truck } = model.setup;
  const body = truck.body.find(({ name }) => name === part);
  if (part === undefined || names.size > 1 || body === undefined) return null;
  const trim = trimOf(model, part, { budget: budget.share(REGION_PART) });
  const regions = trim?.regions ?? [];
  const alsoMoves = [{ what: "fenderCover" }] as const;
  if (body.kind === "path") {
    if (trim?.left == null) return null;
    const cut = withLeft(trim.left, model, file, isAligned);
    const checked = cut === null ? null : checkClearance(cut, { budget: budget.share(REGION_PART) });
    if (checked?.verdict !== "clear") return null;
    const depth = Math.max(...regions.map((region) => region.depth));
    const { gap, bound } = leastOf(checked);
    return {
      set: [],
      trim: { part, depth, regions, left: trim.left },
      gap,
      bound,
      smaller: smallerOf(part, model, file, isAligned, budget),
      alsoMoves,
    };
  }
  const { gap, bound } = leastOf({ parts: parts.filter((entry) => entry.part !== part) });
  const short = allowance - Math.min(...near.map((entry) => entry.bound));
  return {
    set: [],
    trim: { part, depth: Math.max(short, ...regions.map(({ depth }) => depth)), regions, left: null },
    gap: Math.min(allowance, gap ?? allowance),
    bound: Math.min(allowance, bound ?? allowance),
    smaller: SEARCHED,
    alsoMoves,
  };
}

/** That an edge which is left a step nearer does not clear, where that is proven. */
function smallerOf(part: string, model: Model, file: string, isAligned: boolean, budget: Budget): Smaller {
  const less = trimOf(model, part, { budget: budget.share(REGION_PART), more: TRIM_MORE - STEP });
  const cut = less?.left == null ? null : withLeft(less.left, model, file, isAligned);
  if (cut === null || new Touches(model.setup.allowance).of(cut, budget) !== "misses") return SEARCHED;
  return { rank: "stepped", steps: [STEP] };
}

function withLeft(
  { part, index }: LeftPart,
  { setup }: Model,
  file: string,
  isAligned: boolean,
): Model | null {
  const body = setup.truck.body.map((as, i) => (i === index ? part : as));
  const made = modelAsked({ setup: { ...setup, truck: { ...setup.truck, body } }, file, isAligned });
  return made.ok ? made.value : null;
}

function leastOf({ parts }: Pick<CheckReport, "parts">): {
  readonly gap: number | null;
  readonly bound: number | null;
} {
  if (parts.length === 0) return { gap: null, bound: null };
  return {
    gap: Math.min(...parts.map(({ gap }) => gap)),
    bound: Math.min(...parts.map(({ bound }) => bound)),
  };
}
