import { type KeyboardEvent, type PointerEvent, useMemo, useRef, useState } from "react";
import { limitsPastAt } from "../../../studies/limits/limitsPastAt.ts";
import { heightText, lockText } from "../../../studies/wording/poseWords.ts";
import { mmFromUnits } from "../../../units/lengthUnits.ts";
import { stepTo } from "../../../units/stepLength.ts";
import { lengthFormatOf, lengthStepOf } from "../../state/preferences.ts";
import { marginsAt } from "../../state/shown.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import type { DrawnMap, MapSideName } from "../../work/drawnMap.ts";
import { MapPast, type PointedPose } from "./MapPast.tsx";
import { MapPicture } from "./MapPicture.tsx";
import { MapScales } from "./MapScales.tsx";
import { MapHatches, MapWorst } from "./MapWorst.tsx";
import { MAP_BOX, type MapFrame, mapFrameOf, snapped } from "./mapFrame.ts";

export type MapBoardProps = {
  truck: Truck;
  /** null = not known yet. */
  drawn: DrawnMap | null;
  /** What is drawn is another truck's: this one's is on the way. */
  isStale: boolean;
  side: MapSideName;
};

/** One step of an arrow key across the map: a hundredth of full lock. */
const STEER_STEP = 0.01;

/** What the arrow keys do: height, steer. The dot moves the way the key points; left is a left turn. */
const MOVES: Readonly<Record<string, readonly [up: 0 | 1 | -1, turn: 0 | 1 | -1]>> = {
  ArrowUp: [1, 0],
  ArrowDown: [-1, 0],
  ArrowLeft: [0, 1],
  ArrowRight: [0, -1],
};

/** Keys that go all the way: full left lock, full right lock; full bump, full droop; straight ahead. */
const ENDS: Readonly<Record<string, { readonly steer?: number; readonly height?: "bump" | "droop" }>> = {
  Home: { steer: 1 },
  End: { steer: -1 },
  PageUp: { height: "bump" },
  PageDown: { height: "droop" },
  "0": { steer: 0 },
};

/** The map as a control: press or drag to put the truck there, or use the arrow keys. */
export function MapBoard({ truck, drawn, isStale, side }: MapBoardProps) {
  const svg = useRef<SVGSVGElement>(null);
  const [pointed, setPointed] = useState<PointedPose | null>(null);
  const lengths = useWorkbench((s) => s.preferences.lengths);
  const setPose = useWorkbench((s) => s.setPose);
  const { setup } = truck;
  const { droop, bump } = setup.travel;
  const frame = useMemo(() => mapFrameOf(droop, bump), [droop, bump]);
  const format = lengthFormatOf(lengths, setup.units);
  const step = lengthStepOf(lengths, setup.units);
  const travelStep = mmFromUnits(step.size, step.units);
  const travel = useWorkbench((s) => s.travel);
  const steer = useWorkbench((s) => s.steer);
  const [most] = limitsPastAt(marginsAt(truck, travel, steer));
  // The limit that the pose passes most, and the pose in words, for whoever cannot see the dot.
  const past = most === undefined ? "" : `past ${most.side} ${most.name}`;
  const at = `${heightText(travel, setup, format)}, ${lockText(steer)}`;
  const spoken = past === "" ? at : `${at}, ${past}`;

  const pointedAt = (event: PointerEvent<SVGSVGElement>): PointedPose => {
    const box = svg.current!.getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * MAP_BOX.width;
    const y = ((event.clientY - box.top) / box.height) * MAP_BOX.height;
    return { travel: frame.travelAt(y), steer: frame.steerAt(x) };
  };
  const go = (event: PointerEvent<SVGSVGElement>) => {
    const at = pointedAt(event);
    const [travel, steer] = snapped(at.travel, at.steer, setup, travelStep);
    setPose(travel, steer);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const { travel, steer } = workbench.getState();
    const count = event.shiftKey ? 8 : 1;
    const [up, turn] = MOVES[event.key] ?? [0, 0];
    const end = ENDS[event.key];
    if (end) setPose(end.height ? setup.travel[end.height] : travel, end.steer ?? steer);
    else if (up !== 0) setPose(stepTo(travel, travelStep, up, count), steer);
    else if (turn !== 0) setPose(travel, stepTo(steer, STEER_STEP, turn, count));
    else return;
    event.preventDefault();
  };

  return (
    <div
      className="map-board"
      role="application"
      aria-roledescription="map of height and steering"
      aria-label={`Pose: ${spoken}. Arrow up and down change the height, left and right steer. Home and End go to full lock, Page Up and Page Down to full bump and droop, 0 straight ahead.`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: an application is interactive
      tabIndex={0}
      onKeyDown={onKeyDown}
      aria-busy={isStale}
    >
      <svg
        ref={svg}
        viewBox={`0 0 ${MAP_BOX.width} ${MAP_BOX.height}`}
        aria-hidden="true"
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          go(event);
        }}
        onPointerMove={(event) => {
          setPointed(pointedAt(event));
          if (event.currentTarget.hasPointerCapture(event.pointerId)) go(event);
        }}
        onPointerLeave={() => setPointed(null)}
      >
        <MapHatches />
        {drawn && <MapPicture drawn={drawn} side={side} frame={frame} allowance={setup.allowance} />}
        <MapScales setup={setup} frame={frame} format={format} />
        <MapWorst truck={truck} frame={frame} side={side} />
        <MapPast drawn={drawn} pointed={pointed} past={past} />
        <MapDot frame={frame} />
      </svg>
    </div>
  );
}

type MapDotProps = {
  frame: MapFrame;
};

/** The pose shown, with a hair each way to read it off the edges. Moved only: none of it is drawn anew. */
function MapDot({ frame }: MapDotProps) {
  const travel = useWorkbench((s) => s.travel);
  const steer = useWorkbench((s) => s.steer);
  const x = frame.x(steer);
  const y = frame.y(travel);
  const { left, right, top, bottom, width, height } = MAP_BOX;
  return (
    <g className="map-pose">
      <line y1={top} y2={height - bottom} style={{ transform: `translate(${x}px)` }} />
      <line x1={left} x2={width - right} style={{ transform: `translate(0, ${y}px)` }} />
      <g style={{ transform: `translate(${x}px, ${y}px)` }}>
        <circle r={9} />
        <circle className="map-pose-core" r={2.5} />
      </g>
    </g>
  );
}
