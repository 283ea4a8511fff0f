import { workbench } from "../../state/workbench.ts";

/** ms without a key after which a typed value counts as meant: what takes long, such as suggestions, may start. */
const PAUSE = 500;

/** One stay in a field: all that is typed in it is one step to undo, however often it pauses. */
export interface TypingVisit {
  /** To be called before each change. */
  touch(): void;
  /** Ends the stay. */
  end(): void;
  /** Ends it and puts everything back to where it began; says whether there was anything to put back. */
  cancel(): boolean;
}

export function typingVisit(): TypingVisit {
  let isOpen = false;
  let hasTyped = false;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const pause = () => {
    clearTimeout(timer);
    removeEventListener("pointerdown", pause, true);
    if (isOpen) workbench.getState().endGesture();
    isOpen = false;
  };
  const open = () => {
    if (isOpen) return;
    const { beginGesture, resumeGesture } = workbench.getState();
    if (hasTyped) resumeGesture();
    else beginGesture();
    isOpen = hasTyped = true;
    // A drag that starts elsewhere is a gesture of its own and must not be ended by this one's clock.
    addEventListener("pointerdown", pause, true);
  };
  return {
    touch() {
      open();
      clearTimeout(timer);
      timer = setTimeout(pause, PAUSE);
    },
    end() {
      pause();
      hasTyped = false;
    },
    cancel() {
      if (!hasTyped) return false;
      open();
      clearTimeout(timer);
      removeEventListener("pointerdown", pause, true);
      workbench.getState().cancelGesture();
      isOpen = hasTyped = false;
      return true;
    },
  };
}
