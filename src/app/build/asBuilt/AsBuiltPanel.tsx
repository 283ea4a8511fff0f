import "./asBuilt.css";
import { useMemo, useState } from "react";
import { READING_KEYS } from "../../../setup/types/asBuiltTypes.ts";
import { valueAt } from "../../../setup/types/keyPath.ts";
import { asBuiltSides } from "../../../studies/jig/asBuiltReport.ts";
import { jigSheetOf } from "../../../studies/jig/jigSheet.ts";
import {
  JIG_CAUTIONS,
  readingsFrom,
  readingsNote,
  sideSentences,
  unreadSentence,
} from "../../../studies/wording/asBuiltWords.ts";
import { jigFormat } from "../../../studies/wording/jigWords.ts";
import { AnyField } from "../../measure/groups/AnyFields.tsx";
import { Fold } from "../../parts/Fold.tsx";
import { shownDocument } from "../../state/selectors.ts";
import { boltedTruck, type Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { OrderAhead } from "../order/orderStands.tsx";
import { BuiltTable } from "./BuiltTable.tsx";
import { KeepBoth } from "./KeepBuilt.tsx";
import { BuiltAnswer, OnTheTruck } from "./OnTheTruck.tsx";
import { ReadingTable } from "./ReadingTable.tsx";

export type AsBuiltPanelProps = {
  truck: Truck;
};

/** From what was read off the jig to the knuckles that were really built, and what their errors do on the truck. */
export function AsBuiltPanel({ truck }: AsBuiltPanelProps) {
  const format = jigFormat(useFormat());
  const { setup } = truck.bolted;
  const sheet = useMemo(() => jigSheetOf(setup), [setup]);
  const sides = useMemo(() => asBuiltSides(setup), [setup]);
  const bolted = useMemo(() => asBolted(truck), [truck]);
  const read = sides === null ? [] : [sides.left, sides.right].filter((side) => side !== null);
  const failing = read.flatMap(({ passes }) => passes.filter((row) => !row.passes)).length;
  const [wanted, setWanted] = useState(false);
  const isAligned = wanted && setup.alignment.targets !== null;
  const note = readingsNote(read.length, failing);
  return (
    <Fold id="asBuilt" title="As built" note={<span data-fails={failing > 0}>{note}</span>}>
      <OrderAhead truck={truck} />
      <section data-board-undo="" className="as-built" aria-label="As built">
        <div className="as-built-answer" role="status">
          {sides && bolted ? (
            <BuiltAnswer {...{ truck: bolted, sides, sheet, format, isAligned }} />
          ) : (
            <p>
              Type what was read off the jig, as the tape reads it: 6 1/8, 155.6 mm, 8.4; Enter goes on to the
              next. Whether the knuckles pass, and whether the truck still clears on them, then stands here.
            </p>
          )}
        </div>
        <p className="fold-fine">
          What is left empty was not read. Readings are kept with the setup and printed with the jig sheet;
          they change nothing of the truck.
        </p>
        <ReadingsFrom />
        <ReadingTable sheet={sheet} sides={sides} format={format} />
        <details>
          <summary>The jig, its tolerances, and how well readings are known</summary>
          <AnyField path={["jig"]} />
          <AnyField path={["asBuilt", "within"]} />
        </details>
        {sides && (
          <div className="as-built-told" role="status">
            {read.map((side) => (
              <div key={side.side}>
                {sideSentences(side, sheet, format).map((sentence) => (
                  <p key={sentence} data-fails={/FAILS|contradict/.test(sentence)}>
                    {sentence}
                  </p>
                ))}
              </div>
            ))}
            {unreadSentence(sides) !== "" && <p>{unreadSentence(sides)}</p>}
          </div>
        )}
        {read.map((side) => (
          <BuiltTable key={side.side} side={side} sheet={sheet} format={format} />
        ))}
        <KeepBoth sides={read} />
        {sides && bolted && (
          <OnTheTruck {...{ truck: bolted, sides, sheet, format, isAligned }} onChoose={setWanted} />
        )}
        <p className="fold-fine">{JIG_CAUTIONS}</p>
      </section>
    </Fold>
  );
}

/** Whether readings were in the file that was opened, so that nobody takes them for what was typed just now. */
function ReadingsFrom() {
  const inFile = useWorkbench((s) => s.saved[s.documentId]);
  const shown = useWorkbench(shownDocument);
  const paths = ["left", "right"].flatMap((side) => READING_KEYS.map((key) => ["asBuilt", side, key]));
  const read = paths.filter((path) => valueAt(shown, path) !== undefined);
  const came = read.filter((path) => valueAt(inFile, path) === valueAt(shown, path)).length;
  const told = readingsFrom(came, read.length - came);
  return told === "" ? null : <p className="readings-from">{told}</p>;
}

/** The truck as bolted on: errors of a knuckle are looked at before anything is set for them. */
function asBolted(truck: Truck): Truck | null {
  if (!truck.ask.isAligned) return truck;
  const made = boltedTruck(truck.ask.setup, truck.file);
  return made.ok ? made.value : null;
}
