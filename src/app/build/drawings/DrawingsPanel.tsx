import "./drawings.css";
import { useState } from "react";
import { drawnBytes } from "../../../files/drawnBytes.ts";
import { formatIssue } from "../../../setup/reading/issueList.ts";
import { sheetJson } from "../../../studies/documents/sheetJson.ts";
import { type DrawingAsk, type ShopDrawings, usualAsk } from "../../../studies/drawings/shopDrawings.ts";
import {
  DRAWING_CAUTIONS,
  NO_DRAWINGS_YET,
  unwrittenSentence,
} from "../../../studies/wording/drawingWords.ts";
import { Fold } from "../../parts/Fold.tsx";
import { NextStep } from "../../parts/NextStep.tsx";
import { knuckleFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { FileList } from "../../parts/sheets/FileList.tsx";
import { PrintSheets } from "../../parts/sheets/PrintSheets.tsx";
import type { Truck } from "../../state/truck.ts";
import { useAnswer, useLastAnswer } from "../../work/useAnswer.ts";
import { KnuckleRubs } from "../order/KnuckleRubs.tsx";
import { OrderAhead } from "../order/orderStands.tsx";
import { BuildWays, UsualBuildNote } from "../unbuilt/BuildWays.tsx";
import { DrawingChoices } from "./DrawingChoices.tsx";
import { SheetPreview } from "./SheetPreview.tsx";

/** What goes to the shop floor: the sheets as they print, and every file to save. */
export function DrawingsPanel({ truck }: { truck: Truck }) {
  const { build } = truck.setup;
  return (
    <Fold
      id="drawings"
      title="Drawings"
      note={build === null ? "nothing to draw yet" : undefined}
      isOpen={build !== null}
    >
      <OrderAhead truck={truck} />
      {build !== null && <KnuckleRubs truck={truck} />}
      {build === null ? <NoDrawings /> : <Drawings truck={truck} />}
      {build === null && <NextStep to="jig" />}
    </Fold>
  );
}

function NoDrawings() {
  return (
    <>
      <p>{NO_DRAWINGS_YET}</p>
      <BuildWays />
    </>
  );
}

function Drawings({ truck }: { truck: Truck }) {
  const { units } = truck.setup;
  const [ask, setAsk] = useState<DrawingAsk>(() => usualAsk(units));
  const answered = useAnswer("drawings", truck, { question: ask });
  const drawn = useLastAnswer(answered);
  return (
    <div className="drawings">
      <UsualBuildNote truck={truck} />
      <DrawingChoices units={units} ask={ask} onChange={setAsk} />
      {answered?.failure != null && <p role="alert">{answered.failure}</p>}
      {drawn === null ? (
        <p role="status">Drawing…</p>
      ) : drawn.ok ? (
        <Drawn drawings={drawn.value} truck={truck} ask={ask} />
      ) : (
        <ul role="alert">
          {drawn.issues.map((issue) => (
            <li key={issue.key}>{formatIssue(issue)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

type DrawnProps = { drawings: ShopDrawings; truck: Truck; ask: DrawingAsk };

function Drawn({ drawings, truck, ask }: DrawnProps) {
  const unwritten = unwrittenSentence(drawings.unwritten);
  return (
    <>
      <SheetPreview pages={drawings.pages} />
      <PrintSheets pages={drawings.pages} />
      {/* Before the files, which are many: whoever prints goes on from here. */}
      <NextStep to="jig" />
      <FileList files={drawings.files} />
      <SaveMenu
        of="the list of drawings"
        files={[
          knuckleFile(truck, "sheet", "Cut list and drawings, by what they are", () => {
            const written = drawings.files.map((one) => ({ ...one, bytes: drawnBytes(one.contents) }));
            return sheetJson(drawings, written, ask, truck.setup.units);
          }),
        ]}
      />
      {unwritten !== "" && <p role="status">{unwritten}</p>}
      {DRAWING_CAUTIONS.map((text) => (
        <p key={text} className="drawings-caution">
          {text}
        </p>
      ))}
    </>
  );
}
