import "./handles/handles.css";
import { type KeyboardEvent as Keys, type MouseEvent, useEffect, useRef, useState } from "react";
import { crossWords, PICK_TEXTS } from "../../studies/wording/gaugeWords.ts";
import { usePageMark } from "../parts/usePageMark.ts";
import {
  type AskedOfTruck,
  endPick,
  scanPick,
  type TruckPlace,
  takeCross,
  useScanPick,
} from "../state/scanPick.ts";
import { useFormat } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
import { useHandles } from "./handles/handleStore.ts";
import { onPicture } from "./handles/picturePlane.ts";

/** Over the picture while a point is picked: what is asked for, and the places of the truck that can be pressed. */
export function PickPlaces() {
  const asked = useScanPick((s) => s.asked);
  const isAsked = asked !== null;
  usePageMark("picking", asked?.on ?? null);
  useEffect(() => {
    if (!isAsked) return;
    const onKey = (event: KeyboardEvent) => event.key === "Escape" && endPick();
    document.querySelector(".stage")?.scrollIntoView({ block: "nearest" });
    addEventListener("keydown", onKey);
    // What is asked for may stand elsewhere in another document, or nowhere.
    const stop = workbench.subscribe(({ document, variant }, before) => {
      if (document !== before.document || variant !== before.variant) endPick();
    });
    return () => {
      removeEventListener("keydown", onKey);
      stop();
    };
  }, [isAsked]);
  if (!asked) return null;
  return (
    <>
      {asked.on === "truck" ? (
        <Places places={asked.places} take={asked.take} />
      ) : (
        <>
          <Marks marks={asked.marks} />
          <Cross />
        </>
      )}
      <div className="stage-pick">
        <p role="status">{asked.words}</p>
        {asked.on === "scan" && <CrossTold />}
        <button type="button" className="small-button" onClick={endPick}>
          {PICK_TEXTS.end}
        </button>
      </div>
    </>
  );
}

/** Pixels that an arrow moves the cross by, and with Shift. */
const STEP = 12;
const FINE = 1;

const WAYS: Readonly<Record<string, readonly [right: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The cross on the scan. It has the focus while a place is picked, which then goes back to where it was. */
function Cross() {
  const picture = useHandles((s) => s.picture);
  const cross = useScanPick((s) => s.cross);
  const isReady = useScanPick((s) => s.moveCross !== null);
  const element = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!isReady) return;
    const before = document.activeElement;
    element.current?.focus({ preventScroll: true });
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus({ preventScroll: true });
    };
  }, [isReady]);
  const onKeyDown = (event: Keys) => {
    const way = WAYS[event.key];
    if (way === undefined && event.key !== "Enter") return;
    event.preventDefault();
    event.stopPropagation();
    const size = event.shiftKey ? FINE : STEP;
    if (way) scanPick.getState().moveCross?.(size * way[0], size * way[1]);
    else if (scanPick.getState().cross) takeCross();
    else scanPick.getState().moveCross?.(0, 0);
  };
  const at = picture && cross && onPicture(picture, cross.at);
  return (
    <div
      ref={element}
      className="stage-cross"
      role="application"
      aria-label={PICK_TEXTS.cursor}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it is moved by keys
      tabIndex={0}
      onKeyDown={onKeyDown}
    >
      {at && (
        <svg aria-hidden="true" style={{ left: at.x, top: at.y }} viewBox="-20 -20 40 40">
          <path d="M-18 0H-5M5 0H18M0-18V-5M0 5V18" />
        </svg>
      )}
    </div>
  );
}

/** Where the cross is, in words that are spoken, and buttons that move it once it is out. */
function CrossTold() {
  const format = useFormat();
  const cross = useScanPick((s) => s.cross);
  const isAtEdge = useScanPick((s) => s.isAtEdge);
  return (
    <>
      <p className="cross-told" aria-live="polite">
        {cross ? (
          crossWords(cross.at, isAtEdge, format)
        ) : (
          <>
            <span className="cross-keys">{PICK_TEXTS.keys}</span>
            <span className="cross-finger">{PICK_TEXTS.finger}</span>
          </>
        )}
      </p>
      {cross && (
        <span className="cross-tools">
          {PICK_TEXTS.ways.map(({ key, sign, name }) => (
            <button
              key={key}
              type="button"
              className="small-button cross-ways"
              aria-label={name}
              onClick={() => {
                const [right, down] = WAYS[key]!;
                scanPick.getState().moveCross?.(NUDGE * right, NUDGE * down);
              }}
            >
              {sign}
            </button>
          ))}
          <button type="button" className="small-button" onClick={takeCross}>
            {PICK_TEXTS.take}
          </button>
        </span>
      )}
    </>
  );
}

/** Pixels that a button moves the cross by: a finger has put it near. */
const NUDGE = 2;

type PlacesProps = Pick<AskedOfTruck, "places" | "take">;

/** What is picked on the scan already. */
function Marks({ marks }: { marks: readonly TruckPlace[] }) {
  const picture = useHandles((s) => s.picture);
  if (!picture) return null;
  return (
    <svg className="stage-handles" aria-hidden="true">
      {marks.map(({ name, at }) => {
        const { x, y } = onPicture(picture, at);
        return (
          <g key={name} transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
            <circle className="stage-knob" r={4} />
            <text className="stage-handle-name" y={-9} textAnchor="middle">
              {name}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

function Places({ places, take }: PlacesProps) {
  const picture = useHandles((s) => s.picture);
  const [named, setNamed] = useState<string | null>(null);
  if (!picture) return null;
  const press = (place: TruckPlace) => {
    endPick();
    take(place);
  };
  // Where marks lie over each other the nearest is meant, not the one drawn last.
  const nearest = ({ currentTarget, clientX, clientY }: MouseEvent<SVGSVGElement>) => {
    const { left, top } = currentTarget.getBoundingClientRect();
    const off = ({ at }: TruckPlace) => {
      const { x, y } = onPicture(picture, at);
      return Math.hypot(left + x - clientX, top + y - clientY);
    };
    return places.reduce((best, place) => (off(place) < off(best) ? place : best));
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: no fieldset can be drawn in
    // biome-ignore lint/a11y/useKeyWithClickEvents: each place takes its keys itself
    <svg
      className="stage-handles"
      role="group"
      aria-label="Places of the truck"
      onPointerMove={(event) => setNamed(nearest(event).name)}
      onClick={(event) => press(nearest(event))}
    >
      {places.map((place) => {
        const at = onPicture(picture, place.at);
        return (
          // biome-ignore lint/a11y/useSemanticElements: there is no button element inside a drawing
          <g
            key={place.name}
            className="stage-handle"
            role="button"
            tabIndex={0}
            aria-label={place.name}
            transform={`translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})`}
            onFocus={() => setNamed(place.name)}
            onKeyDown={(event) => {
              if (event.key !== "Enter" && event.key !== " ") return;
              event.preventDefault();
              press(place);
            }}
          >
            <circle className="stage-grip" r={14} />
            <circle className="stage-knob" r={5} />
            {named === place.name && (
              <text className="stage-handle-name" y={-12} textAnchor="middle">
                {place.name}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
