import { useEffect } from "react";
import { setStage, useStage } from "../state/stageSettings.ts";

/** Whether the stage fills the window; Escape gives the page back. */
export function useFill(): boolean {
  const isFilled = useStage((s) => s.isFilled);
  useEffect(() => {
    if (!isFilled) return;
    const listen = (event: KeyboardEvent) => {
      if (event.key === "Escape" && !event.defaultPrevented) setStage({ isFilled: false });
    };
    addEventListener("keydown", listen);
    return () => removeEventListener("keydown", listen);
  }, [isFilled]);
  return isFilled;
}
