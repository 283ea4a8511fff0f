import { isWithin, keyText } from "../../setup/types/keyPath.ts";
import type { Confirmed } from "../../setup/types/types.ts";
import type { Model } from "../model/model.ts";
import { CHECKS, type PlausibilityCheck } from "./checks.ts";
import type { Unusual } from "./unusual.ts";

/** An unusual value that the setup says is so. */
export interface ConfirmedValue {
  readonly unusual: Unusual;
  /** The entry of the setup's `confirmed` that says it. */
  readonly entry: number;
}

/** What of a truck is plausibly a slip: still open, and what was said to be so. */
export interface UnusualValues {
  readonly open: readonly Unusual[];
  readonly confirmed: readonly ConfirmedValue[];
}

const ORDER: readonly PlausibilityCheck["of"][] = ["file", "number", "together"];

const known = new WeakMap<Model, UnusualValues>();

/**
 * Looks a truck over for plausible slips: a variant is a truck of its own. Worked out once a model; as bolted on, since an
 * alignment moves what was measured.
 */
export function unusualIn(model: Model): UnusualValues {
  const before = known.get(model);
  if (before) return before;
  const found = looked(model);
  known.set(model, found);
  return found;
}

function looked(model: Model): UnusualValues {
  const open: Unusual[] = [];
  const confirmed: ConfirmedValue[] = [];
  for (const of of ORDER) {
    for (const { look } of CHECKS.filter((check) => check.of === of)) {
      for (const one of look(model)) {
        const entry = model.setup.confirmed.findIndex((said) => isConfirmedBy(one, said));
        if (entry >= 0) confirmed.push({ unusual: one, entry });
        else if (!open.some((other) => isOfSameField(one, other))) open.push(one);
      }
    }
    if (open.length > 0) break;
  }
  return { open, confirmed };
}

/** mm, radians and plain numbers: what is written in a file is read back this near. */
const SAME = { length: 0.02, angle: 2e-4, number: 1e-6 } as const;

/** Whether somebody said that this is so: the same check, key and value. */
function isConfirmedBy({ check, paths, kind, value }: Unusual, said: Confirmed): boolean {
  return (
    said.check === check &&
    said.at === keyText(paths[0]) &&
    said.kind === kind &&
    Math.abs(said.value - value) <= SAME[kind]
  );
}

function isOfSameField(one: Unusual, other: Unusual): boolean {
  return one.check !== other.check && isWithin(one.paths[0], other.paths[0]);
}
