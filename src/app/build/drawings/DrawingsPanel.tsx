import "./drawings.css";
import { useState } from "react";
import { formatIssue } from "../../../setup/reading/formatIssue.ts";
import type { DrawingAsk, ShopDrawings } from "../../../studies/drawings/shopDrawings.ts";
import {
  DRAWING_CAUTIONS,
  NO_DRAWINGS_YET,
  unwrittenSentence,
} from "../../../studies/wording/drawingWords.ts";
import { Fold } from "../../parts/Fold.tsx";
import { FileList } from "../../parts/sheets/FileList.tsx";
import { PrintSheets } from "../../parts/sheets/PrintSheets.tsx";
import type { Truck } from "../../state/truck.ts";
import { useAnswer, useLastAnswer } from "../../work/useAnswer.ts";
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
      {build === null ? <p>{NO_DRAWINGS_YET}</p> : <Drawings truck={truck} />}
    </Fold>
  );
}

function Drawings({ truck }: { truck: Truck }) {
  const { units } = truck.setup;
  const [ask, setAsk] = useState<DrawingAsk>({
    paper: units === "in" ? "letter" : "a4",
    angle: "third",
    kerf: 0,
  });
  const answered = useAnswer("drawings", truck, { question: ask });
  const drawn = useLastAnswer(answered);
  return (
    <div className="drawings">
      <DrawingChoices units={units} ask={ask} onChange={setAsk} />
      {answered?.failure != null && <p role="alert">{answered.failure}</p>}
      {drawn === null ? (
        <p role="status">Drawing…</p>
      ) : drawn.ok ? (
        <Drawn drawings={drawn.value} />
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

function Drawn({ drawings }: { drawings: ShopDrawings }) {
  const unwritten = unwrittenSentence(drawings.unwritten);
  return (
    <>
      <SheetPreview pages={drawings.pages} />
      <PrintSheets pages={drawings.pages} />
      <FileList files={drawings.files} />
      {unwritten !== "" && <p role="status">{unwritten}</p>}
      {DRAWING_CAUTIONS.map((text) => (
        <p key={text} className="drawings-caution">
          {text}
        </p>
      ))}
    </>
  );
}
