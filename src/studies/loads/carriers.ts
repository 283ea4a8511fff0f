import { DEFAULT_LOAD_CASES } from "../../setup/types/defaultLoadCases.ts";
import type { BumpStopSetup, LoadCase, PusherSetup } from "../../setup/types/loadsTypes.ts";
import type { Setup, SetupIssue } from "../../setup/types/types.ts";

/** What carries the front end of a setup, and what it has to carry. */
export interface Carriers {
  readonly cases: readonly LoadCase[];
  readonly spring: PusherSetup;
  readonly bumpStop: BumpStopSetup | null;
}

/** The carriers of a setup, or the key that is missing for an answer. @param file the file's name for the issue */
export function carriersOf(
  { loads, airSpring, masses }: Setup,
  file: string,
): { readonly ok: true; readonly value: Carriers } | { readonly ok: false; readonly issue: SetupIssue } {
  const cases = loads?.cases ?? DEFAULT_LOAD_CASES;
  const missing = (key: string, mend: string) =>
    ({ ok: false, issue: { file, key, value: "nothing", mend } }) as const;
  if (masses === null && cases.some(({ kind }) => kind === "multiples"))
    return missing(
      "masses",
      "is needed for loads in multiples of the corner's weight; give it, or cases of kind force in loads.cases",
    );
  const bag = airSpring && {
    on: "lowerArm" as const,
    bodyMount: airSpring.bodyMount,
    armMount: airSpring.armMount,
  };
  const spring = loads?.spring ?? bag;
  if (spring === null)
    return missing("loads.spring", "is needed: the spring's mounts on body and arm, here or as airSpring");
  return { ok: true, value: { cases, spring, bumpStop: loads?.bumpStop ?? null } };
}
