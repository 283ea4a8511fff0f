import type { AdjustersSetup, WheelTargets } from "../../setup/types/types.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";

/** What an alignment of one wheel starts from. */
export interface SideJob {
  readonly frontEnd: FrontEnd;
  readonly adjusters: AdjustersSetup | null;
  readonly side: Side;
  /** Of the stance, mm. */
  readonly travel: number;
  readonly targets: WheelTargets;
  /** mm of each setting that sensitivities are given for. */
  readonly per: number;
}
