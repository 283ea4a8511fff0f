import { UNBUILT_WAYS, usualBuildSentence } from "../../../studies/wording/drawingWords.ts";
import { goToField } from "../../measure/fields/fieldAsked.ts";
import { notFetched, tell } from "../../state/notice.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";

/** The two ways to say what a knuckle is made of: a usual one at once, or field by field. */
export function BuildWays() {
  const isBlocked = useWorkbench((s) => s.issues.length > 0);
  return (
    <>
      <div className="row-tools">
        <button type="button" className="button" disabled={isBlocked} onClick={() => void fetchAndStart()}>
          {UNBUILT_WAYS.usual}
        </button>
        <button type="button" className="button" onClick={() => goToField(["build"])}>
          {UNBUILT_WAYS.fields}
        </button>
      </div>
      <p className="fold-fine">{UNBUILT_WAYS.note}</p>
    </>
  );
}

/** Starts with a usual knuckle, unless another truck has been put on the board while that was fetched. */
export async function fetchAndStart(): Promise<void> {
  const { documentId, variant } = workbench.getState();
  const usual = await import("./startUsual.ts").catch(() => null);
  if (usual === null) {
    tell(notFetched("A usual knuckle"));
    return;
  }
  const now = workbench.getState();
  if (now.documentId === documentId && now.variant === variant) usual.startUsual();
}

/** How much of what the truck's knuckle is made of is an example's. */
export function UsualBuildNote({ truck }: { truck: Truck }) {
  const text = usualBuildSentence(truck.setup);
  return text === null ? null : <p role="status">{text}</p>;
}
