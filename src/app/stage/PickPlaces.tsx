import "./handles/handles.css";
import { type MouseEvent, useEffect, useState } from "react";
import { PICK_TEXTS } from "../../studies/wording/gaugeWords.ts";
import { type AskedOfTruck, endPick, type TruckPlace, useScanPick } from "../state/scanPick.ts";
import { workbench } from "../state/workbench.ts";
import { useHandles } from "./handles/handleStore.ts";
import { onPicture } from "./handles/picturePlane.ts";

/** Over the picture while a point is picked: what is asked for, and the places of the truck that can be pressed. */
export function PickPlaces() {
  const asked = useScanPick((s) => s.asked);
  const isAsked = asked !== null;
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
        <Marks marks={asked.marks} />
      )}
      <p className="stage-pick" role="status">
        {asked.words}{" "}
        <button type="button" className="small-button" onClick={endPick}>
          {PICK_TEXTS.end}
        </button>
      </p>
    </>
  );
}

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
