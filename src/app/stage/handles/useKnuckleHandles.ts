import { useMemo } from "react";
import { shownPose } from "../../state/shown.ts";
import { useStage } from "../../state/stageSettings.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { type DimensionHandle, dimensionHandles } from "./dimensionHandles.ts";
import { useHandles } from "./handleStore.ts";
import type { Picture } from "./picturePlane.ts";

interface SeenHandles {
  readonly picture: Picture | null;
  readonly handles: readonly DimensionHandle[];
  /** The one pointed out. */
  readonly current: DimensionHandle | undefined;
}

/** The dimensions of the knuckle shown, where they can be dragged now. */
export function useKnuckleHandles(): SeenHandles {
  const picture = useHandles((s) => s.picture);
  const key = useHandles((s) => s.current);
  const side = useStage((s) => s.side);
  const format = useFormat();
  const truck = useWorkbench((s) => s.truck);
  const pose = useWorkbench(shownPose);
  const handles = useMemo(
    () => (truck && pose?.ok ? dimensionHandles(truck.setup.knuckle, pose, side, format) : []),
    [truck, pose, side, format],
  );
  return { picture, handles, current: handles.find((one) => one.key === key) ?? handles[0] };
}
