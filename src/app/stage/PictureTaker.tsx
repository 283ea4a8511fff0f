import { useThree } from "@react-three/fiber";
import { type RefObject, useEffect } from "react";
import { heightText, lockText } from "../../studies/wording/poseWords.ts";
import type { Truck } from "../state/truck.ts";
import { workbench } from "../state/workbench.ts";
import type { Rims } from "./drawing.ts";
import { drawSmooth } from "./drawSmooth.ts";
import { drawStage } from "./drawStage.ts";
import { pictureOf } from "./pictureOf.ts";
import { offerPictures } from "./takePicture.ts";

export type PictureTakerProps = {
  truck: Truck;
  overlay: RefObject<SVGSVGElement | null>;
  rims: Rims;
};

/** Lets the page take the stage's picture, with what is written over it and a caption that says what it shows. */
export function PictureTaker({ truck, overlay, rims }: PictureTakerProps) {
  const get = useThree((s) => s.get);
  useEffect(
    () =>
      offerPictures(() => {
        const stage = get();
        const { travel, steer } = workbench.getState();
        const { setup } = truck;
        // A canvas keeps its picture only until the task ends that drew it.
        (rims === "at rest" ? drawSmooth : drawStage)(stage);
        const parts = [setup.name, setup.variant, heightText(travel, setup), lockText(steer)];
        const caption = parts.filter((part) => part !== null && part !== "").join(" · ");
        if (!overlay.current) throw new Error("PictureTaker: the stage has no overlay");
        return pictureOf(stage.gl.domElement, overlay.current, caption);
      }),
    [get, truck, overlay, rims],
  );
  return null;
}
