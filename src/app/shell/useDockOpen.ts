import { useSyncExternalStore } from "react";
import { usePlotChoice } from "../clear/plots/plotChoice.ts";
import type { Station } from "../state/address.ts";

/** A window in which fields, picture and curves go side by side. */
const ROOMY = "(min-width: 1181px) and (min-height: 840px)";

/** Whether curves stand along the foot of a station: as somebody said, else at Choose where there is room. */
export function useDockOpen(station: Station): boolean {
  const said = usePlotChoice((s) => s.isDockOpen);
  const isRoomy = useSyncExternalStore(
    (tell) => {
      const query = matchMedia(ROOMY);
      query.addEventListener("change", tell);
      return () => query.removeEventListener("change", tell);
    },
    () => matchMedia(ROOMY).matches,
  );
  if (station !== "choose" && station !== "measure") return false;
  return said ?? (station === "choose" && isRoomy);
}
