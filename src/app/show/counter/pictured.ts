import type { PictureFacts } from "../../../studies/wording/pictureFacts.ts";
import type { WheelDrawing } from "./wheelDrawing.ts";

/** One of the trucks on a picture. */
export interface Pictured extends PictureFacts {
  readonly letter: "A" | "B";
  readonly name: string;
  readonly drawing: WheelDrawing;
  /** mm. */
  readonly hubFace: number;
  /** mm. */
  readonly allowance: number;
}
