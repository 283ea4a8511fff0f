import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import { MM_PER_INCH } from "../../../units/lengthUnits.ts";
import { stepBy, stepFrom, stepStart } from "../../measure/fields/stepBy.ts";
import { lengthStep, shownDocument } from "../../state/selectors.ts";
import { workbench } from "../../state/workbench.ts";
import { carriedBy, type DimensionHandle, type DimensionWay, nudgedBy } from "./dimensionHandles.ts";
import { HandleMarks } from "./HandleMarks.tsx";
import { onPicture } from "./picturePlane.ts";
import { useKnuckleHandles } from "./useKnuckleHandles.ts";

/** The knuckle's dimensions over its picture: the part follows the mark that is dragged, or moved with the arrow keys. */
export function KnuckleHandles() {
  const { picture, handles, current } = useKnuckleHandles();
  if (!picture || !current) return null;
  const handleOf = (key: string) => handles.find((handle) => handle.key === key) ?? current;
  return (
    <HandleMarks
      label="Dimensions to drag"
      marks={handles.map(({ key, name, value, seen }) => ({
        key,
        name,
        value,
        isRound: key === "span" || key === "steeringArm",
        at: onPicture(picture, seen),
      }))}
      current={current.key}
      grab={(key) => carrier(handleOf(key))}
      nudge={(key, right, up, steps) => {
        const handle = handleOf(key);
        const moved = nudgedBy(handle, picture, right, up);
        if (moved) stepBy(handle.ways[moved.at]!.path, moved.steps * steps);
      }}
    />
  );

  function carrier(handle: DimensionHandle) {
    const taken = picture!;
    const starts = handle.ways.map(({ path }) => stepStart(path));
    return (right: number, down: number) => {
      const units = carriedBy(handle, taken, right, down);
      for (const [i, way] of handle.ways.entries())
        if (units) stepFrom(way.path, starts[i], Math.round(units[i]! / stepOf(way)));
    };
  }
}

/** One step of a field, in the units its way is told by. */
function stepOf({ path, unit }: DimensionWay): number {
  const state = workbench.getState();
  if (unit === "degree") return fieldAt(path, shownDocument(state))?.step ?? 1;
  const { units, size } = lengthStep(state);
  return units === "in" ? size * MM_PER_INCH : size;
}
