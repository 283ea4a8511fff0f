import { shownGaps } from "../state/shown.ts";
import { setStage, stageSettings, useStage } from "../state/stageSettings.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";

import type { ViewName } from "../state/workbenchState.ts";

const VIEWS: readonly { readonly name: ViewName; readonly label: string; readonly short?: string }[] = [
  { name: "three-quarter", label: "Three-quarter", short: "3/4" },
  { name: "front", label: "Front" },
  { name: "side", label: "Side" },
  { name: "top", label: "Top" },
  { name: "well", label: "Wheel well", short: "Well" },
];

export type ViewButtonsProps = {
  /** Only a knuckle is drawn: it has no wheel well. */
  isAlone: boolean;
};

/** From where the truck is looked at. Pressing the one in use sets it straight again after turning it by hand. */
export function ViewButtons({ isAlone }: ViewButtonsProps) {
  const view = useWorkbench((s) => s.view);
  const setView = useWorkbench((s) => s.setView);
  return (
    <fieldset className="views">
      <legend className="sr-only">View</legend>
      {VIEWS.filter(({ name }) => !isAlone || name !== "well").map(({ name, label, short }) => (
        <button
          key={name}
          type="button"
          className="view-button"
          aria-pressed={view === name}
          onClick={() => {
            if (name === "well" && view !== "well") lookAtTheNearest();
            setView(name);
          }}
        >
          <span className={short ? "view-long" : undefined}>{label}</span>
          {short && <span className="view-short"> {short}</span>}
        </button>
      ))}
    </fieldset>
  );
}

/** mm. Both wheels straight ahead stand alike, but for rounding. */
const ALIKE = 0.01;

/** Whoever looks into a wheel well at a pose looks for what comes nearest there; where both wheels are as near, at the one before. */
function lookAtTheNearest(): void {
  const { side } = stageSettings.getState();
  const gaps = shownGaps(workbench.getState());
  const least = (own: boolean) =>
    gaps.find((one) => (one.side === side) === own)?.gap ?? Number.POSITIVE_INFINITY;
  if (least(false) < least(true) - ALIKE) setStage({ side: side === "left" ? "right" : "left" });
}

/** Which wheel the view from the wheel well, and the dimensions, are about. */
export function WheelButtons() {
  const side = useStage((s) => s.side);
  return (
    <fieldset className="views wheel-buttons">
      <legend className="sr-only">Wheel looked at</legend>
      {(["left", "right"] as const).map((one) => (
        <button
          key={one}
          type="button"
          className="view-button"
          aria-label={`${one === "left" ? "Left" : "Right"} wheel`}
          aria-pressed={side === one}
          onClick={() => setStage({ side: one })}
        >
          {one === "left" ? "Left" : "Right"}
        </button>
      ))}
    </fieldset>
  );
}
