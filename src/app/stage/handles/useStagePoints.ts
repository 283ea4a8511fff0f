import { useMemo } from "react";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { useHandles } from "./handleStore.ts";
import { type Picture, type PicturePlane, planeSeen } from "./picturePlane.ts";
import { type StagePoint, stagePoints } from "./stagePoints.ts";

interface SeenPoints {
  readonly picture: Picture | null;
  /** null where the truck is turned: there is no plane to move a point in. */
  readonly plane: PicturePlane | null;
  readonly points: readonly StagePoint[];
  /** The one pointed out. */
  readonly current: StagePoint | undefined;
}

/** The points of the setup that can be moved in the picture as it is seen now. */
export function useStagePoints(): SeenPoints {
  const picture = useHandles((s) => s.picture);
  const key = useHandles((s) => s.current);
  const document = useWorkbench(shownDocument);
  const hidden = useWorkbench((s) => s.hiddenParts);
  const plane = picture && planeSeen(picture);
  const points = useMemo(
    () => (plane ? stagePoints(document, plane, hidden) : []),
    [document, plane, hidden],
  );
  const current = points.find((point) => point.key === key) ?? points[0];
  return { picture, plane, points, current };
}
