import { ASSUMED_LAYOUT } from "../../../setup/worksheet/assumedLayout.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { startOwnTruck } from "./StartTruck.tsx";

/** The way from an example that nobody has changed to a truck of one's own. */
export function StartButton() {
  const isExample = useWorkbench((s) => {
    const { fromExample } = s.truck?.setup ?? {};
    return fromExample?.isAsItCame === true && fromExample.of !== ASSUMED_LAYOUT;
  });
  if (!isExample) return null;
  return (
    <button type="button" className="link-button" onClick={startOwnTruck}>
      Start your own truck
    </button>
  );
}
