import { lengthText } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { PicturePlane } from "./picturePlane.ts";
import type { StagePoint } from "./stagePoints.ts";

/** The coordinates that the picture shows, as the file has them: `x 5 in, z 17 3/4 in`. */
export function coordinateText({ at }: StagePoint, plane: PicturePlane, format: LengthFormat): string {
  return [plane.across, plane.along]
    .sort()
    .map((axis) => `${"xyz"[axis]} ${lengthText(at[axis]!, format)}`)
    .join(", ");
}
