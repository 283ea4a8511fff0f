import type { Sketch } from "../../../geometry/sketch.ts";
import type { ReadingAsk } from "../../../setup/worksheet/worksheetLines.ts";
import { pointWord, readingEndWords } from "../../../studies/wording/worksheetWords.ts";
import { marksOf } from "../../../studies/worksheet/gaugeReadings.ts";
import { readingSketch, stickSketch } from "../../../studies/worksheet/readingSketch.ts";
import { SketchShapes } from "../../parts/SketchShapes.tsx";
import { shownDocument } from "../../state/selectors.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldSketch } from "../sketches/FieldSketch.tsx";

export type LineSketchProps = {
  /** What is read; null = a field is filled. */
  ask: ReadingAsk | null;
  /** Of the field, without list positions. */
  pattern: readonly string[];
  /** What the line is called. */
  name: string;
};

/** The sketch of a line: both ends of its tape on the truck, or the part it is read off; nothing where there is none. */
export function LineSketch({ ask, pattern, name }: LineSketchProps) {
  if (ask === null) return <FieldSketch pattern={pattern} label={name} isRack />;
  const sketch = readingSketch(ask, readingEndWords(ask), marksOf(shownDocument(workbench.getState())));
  return sketch === null ? <SizeSketch ask={ask} name={name} /> : <TapeSketch sketch={sketch} name={name} />;
}

/** A plumb bob let down from a point to its mark; nothing where that is no place of a truck. */
export function PlumbSketch({ point, mark, name }: { point: string; mark: string; name: string }) {
  const sketch = readingSketch({ plumb: point }, { from: pointWord(point), to: mark });
  return sketch && <TapeSketch sketch={sketch} name={name} />;
}

const STICK = stickSketch("level stick");

/** The lip with a level stick along it. */
export function StickSketch({ name }: { name: string }) {
  return <TapeSketch sketch={STICK} name={name} />;
}

function TapeSketch({ sketch, name }: { sketch: Sketch; name: string }) {
  return (
    <svg
      className="tape-sketch"
      viewBox={`0 0 ${sketch.width} ${sketch.height}`}
      role="img"
      aria-label={`Sketch: ${name}`}
    >
      <SketchShapes shapes={sketch.shapes} prefix="tape" />
    </svg>
  );
}

/** Sizes of a wheel or tire are drawn as the fields they go into. */
function SizeSketch({ ask, name }: { ask: ReadingAsk; name: string }) {
  if (!("size" in ask)) return null;
  const pattern = ask.size === "wheelbase" ? ["truck", "wheelbase"] : ask.size.split(".");
  return <FieldSketch pattern={pattern} label={name} isRack />;
}
