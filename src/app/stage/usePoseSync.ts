import { useThree } from "@react-three/fiber";
import { useContext, useLayoutEffect } from "react";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import { stageSettings } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { workbench } from "../state/workbench.ts";
import { IsGhost, otherPose } from "./otherTruck.ts";
import { stagePose } from "./stagePose.ts";

/**
 * Calls `apply` with the pose on the stage, now and whenever it changes, and asks for a frame. `apply` writes
 * into the scene; no component renders. Inside `IsGhost` it is the pose of a truck that is not shown. A pose that cannot be leaves the last one standing.
 * @param apply must be stable (useCallback), or it is called again at each render
 */
export function usePoseSync(truck: Truck, apply: (pose: SolvedPose) => void): void {
  const invalidate = useThree((s) => s.invalidate);
  const isGhost = useContext(IsGhost);
  useLayoutEffect(() => {
    let applied: SolvedPose | null = null;
    const follow = () => {
      const state = workbench.getState();
      // Between a change of truck and the new parts' first render the old parts are still here.
      if (state.truck !== truck && !isGhost) return;
      const pose = isGhost ? otherPose(truck, state) : stagePose(state);
      if (!pose?.ok || pose === applied) return;
      applied = pose;
      apply(pose);
      invalidate();
    };
    follow();
    const unfollow = workbench.subscribe(follow);
    const unfollowStage = stageSettings.subscribe((now, before) => {
      if (now.roll !== before.roll) follow();
    });
    return () => {
      unfollow();
      unfollowStage();
    };
  }, [truck, apply, invalidate, isGhost]);
}
