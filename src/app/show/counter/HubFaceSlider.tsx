import { lengthText } from "../../../studies/wording/lengths.ts";
import { counter } from "../../state/counterStore.ts";
import { keepTogether } from "../../words/keyWords.ts";
import type { Comparison } from "./useComparison.ts";

export type HubFaceSliderProps = {
  comparison: Comparison;
  /** Told when it is gripped by a pointer, and when it is let go. */
  onHold: (isHeld: boolean) => void;
};

/** What ends a hold, wherever it happens: a menu that opens, or another window, may keep the pointer's own end to itself. */
const LET_GO = ["pointerup", "pointercancel", "contextmenu", "blur"] as const;

function holdUntilLetGo(onHold: HubFaceSliderProps["onHold"]): void {
  const held = new AbortController();
  onHold(true);
  for (const end of LET_GO)
    addEventListener(
      end,
      () => {
        held.abort();
        onHold(false);
      },
      { signal: held.signal },
    );
}

/** Tries another hub-face distance on the second truck; nothing of the setup changes with it. */
export function HubFaceSlider({ comparison, onHold }: HubFaceSliderProps) {
  const { slider, second, secondOwn, isWhatIf, format } = comparison;
  if (!slider || !secondOwn) return null;
  const { least, most, step } = slider;
  const own = secondOwn.setup.knuckle.hubFace;
  const shown = second?.truck.setup.knuckle.hubFace ?? own;
  const text = (mm: number) => lengthText(mm, format);
  return (
    <div className="counter-slider">
      <div className="counter-slider-head">
        <label htmlFor="counter-hub-face">
          What if B had another hub face? <strong>{keepTogether(text(shown))}</strong>
        </label>
        <button
          type="button"
          className="button counter-slider-back"
          disabled={!isWhatIf}
          onClick={() => counter.setState({ hubFace: null })}
        >
          Back to {keepTogether(text(own))}
        </button>
      </div>
      <div className="counter-slider-ends">
        <span>{text(least * step)}</span>
        <input
          id="counter-hub-face"
          type="range"
          min={least}
          max={most}
          step={1}
          value={Math.round(shown / step)}
          aria-valuetext={text(shown)}
          onPointerDown={({ button }) => button === 0 && holdUntilLetGo(onHold)}
          onChange={(event) => {
            const hubFace = Number(event.target.value) * step;
            counter.setState({ hubFace: Math.abs(hubFace - own) < 1e-6 ? null : hubFace });
          }}
        />
        <span>{text(most * step)}</span>
      </div>
    </div>
  );
}
