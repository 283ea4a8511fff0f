import { useCallback, useRef } from "react";
import type { LineSegments, Mesh } from "three";
import type { BodyPart, PathPart } from "../../setup/types/truckTypes.ts";
import { gapWord } from "../../studies/wording/gapTexts.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { shownGaps } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
import { bodyGeometry } from "./bodyGeometry.ts";
import { isGuess } from "./guess.ts";
import { useInk } from "./InkProvider.tsx";
import { lipPanelGeometry } from "./lipPanel.ts";
import { isLip, measuredWheel } from "./lips.ts";
import { MirroredSide } from "./MirroredSide.tsx";
import { standsAsTyped } from "./partPoints.ts";
import { Solid } from "./Solid.tsx";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

export type BodySideProps = {
  truck: Truck;
  side: Side;
};

/** The body parts that stand on one side, but for those that are hidden. */
export function BodySide({ truck, side }: BodySideProps) {
  const hidden = useWorkbench((s) => s.hiddenParts);
  return truck.setup.truck.body
    .filter((part) => (part.side === "both" || part.side === side) && !hidden.includes(part.name))
    .map((part) => (
      <MirroredSide key={part.name} side={standsAsTyped(part) ? "left" : side}>
        <BodyPartView truck={truck} part={part} side={side} />
      </MirroredSide>
    ));
}

export type BodyPartViewProps = {
  truck: Truck;
  part: BodyPart;
  side: Side;
};

/** A body part on one side. Its outline takes the ink of its state at the pose shown. */
function BodyPartView({ truck, part, side }: BodyPartViewProps) {
  const ink = useInk();
  const solid = useGeometry(() => bodyGeometry(part), [part]);
  const isRound = part.kind === "path";
  const at = truck.setup.truck.body.indexOf(part);
  const isDashed = isRound && isGuess(truck.setup, ["truck", "body", at]);
  const outline = useRef<Mesh>(null);
  const edges = useRef<LineSegments>(null);
  const apply = useCallback(() => {
    const entry = shownGaps(workbench.getState()).find((gap) => gap.part === part.name && gap.side === side);
    const word = entry ? gapWord(entry.gap, truck.setup.allowance) : "clear";
    if (outline.current) outline.current.material = (isDashed ? ink.guess : ink.outline)[word];
    if (edges.current) edges.current.material = ink.edge[word];
  }, [ink, isDashed, part, side, truck]);
  usePoseSync(truck, apply);
  const wheel = measuredWheel(truck);
  return (
    <>
      <Solid
        geometry={solid}
        tone="body"
        veil={isRound ? 0 : 2}
        hasOutline={isRound}
        hasEdges={!isRound}
        isGuess={isDashed}
        outlineRef={outline}
        edgesRef={edges}
      />
      {wheel && isLip(part, wheel) && <LipPanel part={part} />}
    </>
  );
}

/** The fender's side over its lip, where the picture is not one of lines alone. */
function LipPanel({ part }: { part: PathPart }) {
  const { fading } = useInk();
  const panel = useGeometry(() => lipPanelGeometry(part), [part]);
  return fading && <mesh geometry={panel} material={fading} renderOrder={24} />;
}
