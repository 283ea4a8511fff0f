import "./sketches.css";
import type { ReactNode } from "react";
import { CamberSketch, CasterSketch, ShimSketch, ToeSketch } from "./alignmentSketches.tsx";
import { KnuckleSketch, PinLeadSketch, SteeringArmSketch } from "./knuckleSketches.tsx";
import { ArmSketch, LinkageSketch, PivotsSketch } from "./linkSketches.tsx";
import { BoxSketch, GapSketch, TravelSketch, WheelbaseSketch } from "./truckSketches.tsx";
import { RotorSketch, RoundSketch, TireSketch, WheelSketch } from "./wheelSketches.tsx";

export type FieldSketchProps = {
  /** Of the field, as the catalogue has it. */
  pattern: readonly string[];
  label: string;
  /** The steering is a rack. */
  isRack: boolean;
};

/** A small line drawing of what a field measures, its dimension pointed out; nothing for a field that measures nothing. */
export function FieldSketch({ pattern, label, isRack }: FieldSketchProps) {
  const drawing = drawingOf(pattern, isRack);
  if (drawing === null) return null;
  return (
    <svg className="sketch" viewBox="0 0 220 164" role="img" aria-label={`Sketch: ${label}`}>
      {drawing}
    </svg>
  );
}

function drawingOf(pattern: readonly string[], isRack: boolean): ReactNode {
  const [first = "", second = ""] = pattern;
  const last = pattern.at(-1) ?? "";
  if (first === "knuckle") {
    if (last === "pinLead") return <PinLeadSketch />;
    return last === "steeringArm" ? <SteeringArmSketch /> : <KnuckleSketch lit={last} />;
  }
  if (first === "wheel") return <WheelSketch lit={last} />;
  if (first === "tire") return <TireSketch lit={last} />;
  if (first === "alignment" && last === "camber") return <CamberSketch />;
  if (first === "alignment" && last === "caster") return <CasterSketch />;
  if (first === "alignment" && last === "toe") return <ToeSketch />;
  if (first === "adjusters") return adjusterSketch(last);
  if (first === "travel" || last === "travel") return <TravelSketch lit={last} />;
  if (first === "allowance") return <GapSketch />;
  if (first === "hardware" && second === "rotor") return <RotorSketch lit={last} />;
  if (last === "min" || last === "max") return <BoxSketch lit={last} />;
  if (last === "radius") return <RoundSketch />;
  if (second === "wheelbase") return <WheelbaseSketch />;
  if (second === "upperArm" || second === "lowerArm") return <ArmSketch lit={last} />;
  if (second === "steering") return <LinkageSketch lit={pattern.slice(2).join(".")} isRack={isRack} />;
  return null;
}

function adjusterSketch(key: string): ReactNode {
  if (key === "least" || key === "most" || key === "step") return <ShimSketch lit={key} />;
  if (key === "front" || key === "rear" || key === "direction" || key === "throw")
    return <PivotsSketch lit={key} />;
  return null;
}
