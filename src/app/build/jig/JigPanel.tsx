import "./jig.css";
import { useMemo, useState } from "react";
import type { Sketch } from "../../../geometry/sketch.ts";
import { jigJson } from "../../../studies/documents/asBuiltJson.ts";
import { jigSheetOf } from "../../../studies/jig/jigSheet.ts";
import { jigSketches } from "../../../studies/jig/jigSketch.ts";
import { JIG_CAUTIONS } from "../../../studies/wording/asBuiltWords.ts";
import { jigFormat, jigSetupSentences, jigSketchWords } from "../../../studies/wording/jigWords.ts";
import { jigTitle, paperHead, paperLine } from "../../../studies/wording/paperHead.ts";
import { Fold } from "../../parts/Fold.tsx";
import { NextStep } from "../../parts/NextStep.tsx";
import { printAlone } from "../../parts/printAlone.ts";
import { knuckleFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { SketchShapes } from "../../parts/SketchShapes.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { OrderAhead } from "../order/orderStands.tsx";
import { JigTable } from "./JigTable.tsx";

export type JigPanelProps = {
  truck: Truck;
};

const SIDES = ["left", "right"] as const;

/** The jig sheet: how the jig is set up for this knuckle, drawn, and what must be read off it; for the screen and on paper. */
export function JigPanel({ truck }: JigPanelProps) {
  const format = jigFormat(useFormat());
  const { setup } = truck.bolted;
  const sheet = useMemo(() => jigSheetOf(setup), [setup]);
  const head = paperHead(setup);
  const [shown, setShown] = useState<(typeof SIDES)[number]>("left");
  return (
    <Fold id="jig" title="Jig sheet" note="what the tape must read">
      <OrderAhead truck={truck} />
      <section className="jig-sheet" aria-label="Jig sheet">
        <header className="jig-head">
          <p className="jig-of">
            {jigTitle(head.part)} <small>{paperLine(head)}</small>
          </p>
          <PrintJig />
          <NextStep to="asBuilt" isBare />
          <SaveMenu
            of="the jig sheet"
            files={[knuckleFile(truck, "jig", "The jig sheet", () => jigJson(sheet, setup.units))]}
          />
        </header>
        <fieldset className="jig-side">
          <legend>Drawn</legend>
          {SIDES.map((side) => (
            <label key={side}>
              <input type="radio" name="jig-side" checked={side === shown} onChange={() => setShown(side)} />{" "}
              {side} knuckle
            </label>
          ))}
        </fieldset>
        {SIDES.map((side) => {
          const say = jigSketchWords(sheet, side, format);
          const { fromFront, fromAbove } = jigSketches(sheet, side, say);
          return (
            <div key={side} className="jig-views" data-shown={side === shown}>
              <JigSketchView title={say.fromFront} sketch={fromFront} />
              <JigSketchView title={say.fromAbove} sketch={fromAbove} />
            </div>
          );
        })}
        <ol className="jig-steps">
          {jigSetupSentences(sheet, format).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ol>
        <JigTable sheet={sheet} of={paperLine(head)} setup={setup} format={format} />
        <p className="fold-fine">{JIG_CAUTIONS}</p>
        <NextStep to="asBuilt" />
      </section>
    </Fold>
  );
}

export type JigSketchViewProps = {
  title: string;
  sketch: Sketch;
};

/** One view of the jig, drawn to the knuckle. */
function JigSketchView({ title, sketch: { width, height, shapes } }: JigSketchViewProps) {
  return (
    <figure className="jig-view">
      <figcaption>{title}</figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={title}>
        <SketchShapes shapes={shapes} prefix="jig" />
      </svg>
    </figure>
  );
}

/** Prints the jig sheet alone, for the bench. */
function PrintJig() {
  return (
    <button type="button" className="button" onClick={() => printAlone("jig")}>
      Print the jig sheet
    </button>
  );
}
