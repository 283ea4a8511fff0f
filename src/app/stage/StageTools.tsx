import { useState } from "react";
import { stemOf } from "../parts/reportFiles.ts";
import { saveAs } from "../parts/saveAs.ts";
import { type Play, setStage, useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { takePicture } from "./takePicture.ts";
import { usePlay } from "./usePlay.ts";

export type StageToolsProps = {
  truck: Truck;
  /** Only a knuckle is drawn, which looks the same at any height. */
  isAlone: boolean;
};

const PLAYS: readonly { readonly play: Play; readonly label: string; readonly name: string }[] = [
  { play: "travel", label: "Height", name: "the height, end to end" },
  { play: "steer", label: "Steer", name: "the steering, lock to lock" },
];

/** Plays the truck through its height or its steering, and takes the stage's picture. */
export function StageTools({ truck, isAlone }: StageToolsProps) {
  const playing = useStage((s) => s.play);
  const isFilled = useStage((s) => s.isFilled);
  const hasHandles = useStage((s) => s.hasHandles);
  const isCutOpen = useStage((s) => s.isCutOpen);
  const [failure, setFailure] = useState<string | null>(null);
  usePlay();
  const picture = async () => {
    setFailure(null);
    try {
      const blob = await takePicture();
      if (blob) saveAs(`${stemOf(truck)}.png`, "image/png", blob);
    } catch (error) {
      setFailure(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <div className="stage-tools">
      {(isAlone ? [] : PLAYS).map(({ play, label, name }) => {
        const isOn = playing === play;
        return (
          <button
            key={play}
            type="button"
            className="stage-tool"
            aria-label={`${isOn ? "Pause" : "Play"} ${name}`}
            onClick={() => setStage({ play: isOn ? null : play })}
          >
            <svg viewBox="0 0 12 12" width="11" height="11" aria-hidden="true">
              <path d={isOn ? "M1 1h3v10h-3Z M8 1h3v10h-3Z" : "M1.5 0.5 L11 6 L1.5 11.5 Z"} />
            </svg>
            {label}
          </button>
        );
      })}
      {isAlone && (
        <button
          type="button"
          className="stage-tool"
          aria-pressed={hasHandles}
          title="Marks where dimensions end can be dragged"
          onClick={() => setStage({ hasHandles: !hasHandles })}
        >
          Drag
        </button>
      )}
      {isAlone && truck.setup.build !== null && (
        <button
          type="button"
          className="stage-tool"
          aria-pressed={isCutOpen}
          onClick={() => setStage({ isCutOpen: !isCutOpen })}
        >
          Cut open
        </button>
      )}
      <button type="button" className="stage-tool" aria-label="Save the picture as PNG" onClick={picture}>
        PNG
      </button>
      <button
        type="button"
        className="stage-tool"
        aria-pressed={isFilled}
        aria-label={isFilled ? "Back to the page" : "Fill window"}
        title={isFilled ? "Escape gives the page back" : "F, while the picture has the focus"}
        onClick={() => setStage({ isFilled: !isFilled })}
      >
        {isFilled ? (
          <>
            Back<span className="tool-rest"> to the page</span>
          </>
        ) : (
          "Fill window"
        )}
      </button>
      {failure && <p role="alert">The picture could not be saved: {failure}</p>}
    </div>
  );
}
