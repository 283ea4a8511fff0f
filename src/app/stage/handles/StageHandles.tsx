import { useFormat } from "../../state/useWorkbench.ts";
import { coordinateText } from "./coordinateText.ts";
import { HandleMarks } from "./HandleMarks.tsx";
import { carryStagePoint, nudgeStagePoint } from "./moveStagePoint.ts";
import { onPicture } from "./picturePlane.ts";
import { useStagePoints } from "./stagePoints.ts";

/** Points of the setup over the picture: dragged in its plane, or moved with the arrow keys. */
export function StageHandles() {
  const { picture, plane, points, current } = useStagePoints();
  const format = useFormat();
  if (!picture || !plane || !current) return null;
  const { across, along } = plane;
  const pointOf = (key: string) => points.find((point) => point.key === key) ?? current;
  /** −1 where a coordinate across the truck is given by its mirror image. */
  const wayOf = ({ seen, at }: typeof current, axis: number) => (axis === 1 && seen[1] !== at[1] ? -1 : 1);
  return (
    <HandleMarks
      label="Points to move"
      marks={points.map((point) => ({
        key: point.key,
        name: point.name,
        isRound: point.sort === "arm",
        value: coordinateText(point, plane, format),
        at: onPicture(picture, point.seen),
      }))}
      current={current.key}
      grab={(key) => {
        const point = pointOf(key);
        const shift = (axis: number, pixels: number, perMm: number) => ({
          axis,
          mm: wayOf(point, axis) * (pixels / perMm),
        });
        return (right, down) =>
          carryStagePoint(point, [
            shift(across, right, picture.axes[across]!.x),
            shift(along, down, picture.axes[along]!.y),
          ]);
      }}
      nudge={(key, right, up, steps) => {
        const point = pointOf(key);
        const move = (axis: number, pixels: number) => {
          if (pixels !== 0) nudgeStagePoint(point, axis, wayOf(point, axis) * Math.sign(pixels) * steps);
        };
        move(across, right * picture.axes[across]!.x);
        move(along, -up * picture.axes[along]!.y);
      }}
    />
  );
}
