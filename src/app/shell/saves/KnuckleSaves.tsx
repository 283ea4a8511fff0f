import { formatIssue } from "../../../setup/reading/issueList.ts";
import { asBuiltJson, jigJson } from "../../../studies/documents/asBuiltJson.ts";
import { orderJson } from "../../../studies/documents/orderJson.ts";
import { usualAsk } from "../../../studies/drawings/shopDrawings.ts";
import { jigSheetOf } from "../../../studies/jig/jigSheet.ts";
import { NO_DRAWINGS_YET, UNBUILT_WAYS } from "../../../studies/wording/drawingWords.ts";
import { useOrderSheet } from "../../build/order/orderStands.tsx";
import { knuckleFile } from "../../parts/reportFiles.ts";
import { drawingFile } from "../../parts/sheets/FileList.tsx";
import type { SavedFile } from "../../parts/useSaving.ts";
import type { Truck } from "../../state/truck.ts";
import { answerOnce } from "../../work/savedReport.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { SaveGroup } from "./SaveGroup.tsx";

export type KnuckleSavesProps = { truck: Truck; onSave: (file: SavedFile) => void };

/** What is saved of the knuckle: its drawings where there is a build, its order, what its jig reads. */
export function KnuckleSaves({ truck, onSave }: KnuckleSavesProps) {
  const { setup } = truck.bolted;
  const { units } = setup;
  const sheet = useOrderSheet(truck);
  const question = usualAsk(units);
  const drawings = useAnswer("drawings", setup.build === null ? null : truck, { question });
  const drawn = drawings?.answer?.ok ? drawings.answer.value.files : [];
  const files = [
    ...drawn.map(drawingFile),
    ...(sheet ? [knuckleFile(truck, "order", "The order", () => orderJson(sheet))] : []),
    knuckleFile(truck, "jig", "The jig sheet", () => jigJson(jigSheetOf(setup), units)),
    ...(setup.asBuilt === null ? [] : [asBuiltFile(truck)]),
  ];
  return (
    <SaveGroup title="The knuckle: drawings, cut list, STEP, order, jig" files={files} onSave={onSave}>
      <p className="saves-note">
        {setup.build === null
          ? `${NO_DRAWINGS_YET} Or, at Build under Drawings: ${UNBUILT_WAYS.usual}.`
          : drawings?.failure != null
            ? `The drawings could not be made: ${drawings.failure}`
            : drawings?.answer == null
              ? "Drawing…"
              : !drawings.answer.ok
                ? drawings.answer.issues.map(formatIssue).join(" ")
                : "Other paper, projection or kerf: Build, Drawings."}
      </p>
    </SaveGroup>
  );
}

function asBuiltFile(truck: Truck): SavedFile {
  return knuckleFile(truck, "as-built", "As built", async (signal, onShare) => {
    const wish = { job: "asBuilt", truck, question: { isAligned: false }, given: null } as const;
    const report = await answerOnce(wish, signal, onShare);
    if (report === null) throw new Error("nothing was read of the knuckle");
    return asBuiltJson(report, truck.model.setup);
  });
}
