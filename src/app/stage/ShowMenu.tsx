import { useEffect, useId, useLayoutEffect, useRef, useState } from "react";
import { usePageMark } from "../parts/usePageMark.ts";
import { type EnvelopeChoice, setStage, useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { ENVELOPES } from "./envelopeNames.ts";
import { GhostField } from "./GhostField.tsx";
import { SECTION_AXES, sectionRange } from "./sectionRange.ts";
import { showEnvelope } from "./useEnvelope.ts";

export type ShowMenuProps = {
  truck: Truck;
};

/** What is shown beside the truck, behind one button. */
export function ShowMenu({ truck }: ShowMenuProps) {
  const id = useId();
  const [isOpen, setOpen] = useState(false);
  usePageMark("showing", isOpen ? "open" : null);
  const frame = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const isFilled = useStage((s) => s.isFilled);
  useLayoutEffect(() => {
    const [sheet, panel] = [list.current, frame.current?.closest(".stage-panel")];
    if (!isOpen || !sheet || !panel) return;
    delete sheet.dataset.at;
    sheet.dataset.at = isFilled ? "below" : besideOf(panel, sheet.offsetWidth);
    const bar = sheet.offsetParent?.getBoundingClientRect().bottom ?? 0;
    const under = panel.getBoundingClientRect().bottom - bar;
    // Where the picture fills the window there is nothing to scroll: over its foot rather than cut off.
    const most = innerHeight - OFF - sheet.offsetHeight - bar;
    sheet.style.setProperty("--below", `${isFilled ? Math.min(under, most) : under}px`);
    if (sheet.dataset.at === "below") sheet.scrollIntoView({ block: "nearest" });
  }, [isOpen, isFilled]);
  useEffect(() => {
    if (!isOpen) return;
    const onPress = (event: PointerEvent) => {
      if (!frame.current?.contains(event.target as Node)) setOpen(false);
    };
    addEventListener("pointerdown", onPress);
    return () => removeEventListener("pointerdown", onPress);
  }, [isOpen]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape closes what its button opened
    <div
      ref={frame}
      className="show-menu"
      onKeyDown={(event) => {
        if (event.key !== "Escape" || !isOpen) return;
        event.stopPropagation();
        setOpen(false);
        button.current?.focus();
      }}
    >
      <button
        ref={button}
        type="button"
        className="stage-tool"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => setOpen(!isOpen)}
      >
        Show
        <svg viewBox="0 0 12 12" width="10" height="10" aria-hidden="true">
          <path d="M1 3.5 L11 3.5 L6 9.5 Z" />
        </svg>
      </button>
      <div ref={list} id={id} className="show-list" hidden={!isOpen}>
        <ShowFields truck={truck} />
      </div>
    </div>
  );
}

/** Pixels between the picture and the list. */
const OFF = 6;

/** Where the list stands so that the picture it changes is seen: right or left of it, or below where there is no room. */
function besideOf(panel: Element, width: number): "right" | "left" | "below" {
  const { left, right } = panel.getBoundingClientRect();
  if (right + OFF + width <= document.documentElement.clientWidth) return "right";
  return left - OFF - width >= 0 ? "left" : "below";
}

function ShowFields({ truck }: ShowMenuProps) {
  const id = useId();
  const hasLabels = useStage((s) => s.hasLabels);
  const hasDimensions = useStage((s) => s.hasDimensions);
  const hasHandles = useStage((s) => s.hasHandles);
  const hasCenters = useStage((s) => s.hasCenters);
  const hasJoints = useStage((s) => s.hasJoints);
  const hasSprings = useStage((s) => s.hasSprings);
  const { limits, airSpring } = truck.setup;
  const isFlatView = useWorkbench((s) => s.view === "front" || s.view === "side" || s.view === "top");
  const envelope = useStage((s) => s.envelope?.choice ?? "");
  const axis = useStage((s) => s.section?.axis ?? null);
  const side = useStage((s) => s.side);
  const setView = useWorkbench((s) => s.setView);
  return (
    <>
      <label className="show-check">
        <input
          type="checkbox"
          checked={hasLabels}
          onChange={(event) => setStage({ hasLabels: event.target.checked })}
        />
        Gaps
      </label>
      <label className="show-check">
        <input
          type="checkbox"
          checked={hasDimensions}
          onChange={(event) => setStage({ hasDimensions: event.target.checked })}
        />
        Dimensions
      </label>
      <label className="show-check">
        <input
          type="checkbox"
          checked={hasHandles}
          onChange={(event) => {
            if (event.target.checked && !isFlatView) setView("side");
            setStage({ hasHandles: event.target.checked });
          }}
        />
        Points to move
      </label>
      <label className="show-check">
        <input
          type="checkbox"
          checked={hasCenters}
          onChange={(event) => {
            if (event.target.checked) setView("front");
            setStage({ hasCenters: event.target.checked });
          }}
        />
        Roll center, steering axes (front view)
      </label>
      {(limits?.upperBallJoint || limits?.lowerBallJoint) && (
        <label className="show-check">
          <input
            type="checkbox"
            checked={hasJoints}
            onChange={(event) => setStage({ hasJoints: event.target.checked })}
          />
          Ball joint cones
        </label>
      )}
      {(airSpring || limits?.shock) && (
        <label className="show-check">
          <input
            type="checkbox"
            checked={hasSprings}
            onChange={(event) => setStage({ hasSprings: event.target.checked })}
          />
          Springs and shocks
        </label>
      )}
      <GhostField truck={truck} />
      <label htmlFor={`${id}-envelope`}>Envelope</label>
      <select
        id={`${id}-envelope`}
        value={envelope}
        onChange={(event) => showEnvelope((event.target.value || null) as EnvelopeChoice | null)}
      >
        <option value="">none</option>
        {ENVELOPES.map(({ choice, label }) => (
          <option key={choice} value={choice}>
            {label}
          </option>
        ))}
      </select>
      <label htmlFor={`${id}-section`}>Section</label>
      <select
        id={`${id}-section`}
        value={axis ?? ""}
        onChange={(event) => {
          const chosen = SECTION_AXES.find((one) => one.axis === event.target.value);
          if (chosen) setView(chosen.view);
          setStage({
            section: chosen ? { axis: chosen.axis, at: sectionRange(truck, chosen.axis, side).start } : null,
          });
        }}
      >
        <option value="">none</option>
        {SECTION_AXES.map((one) => (
          <option key={one.axis} value={one.axis}>
            {one.label}
          </option>
        ))}
      </select>
    </>
  );
}
