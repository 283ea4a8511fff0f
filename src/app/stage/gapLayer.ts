import { gapMarks, type MarkedGap } from "../../studies/wording/gapRows.ts";
import { heightText, lockText } from "../../studies/wording/poseWords.ts";
import { shownGaps } from "../state/shown.ts";
import { handleStore } from "./handles/handleStore.ts";
import { type GapMark, gapMark, type ScreenPoint } from "./overlay/gapMark.ts";
import { placeLabels } from "./overlay/placeLabels.ts";
import { svgElement } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";
import { isAtEntry, isSoFar, worstOf } from "./worst.ts";

/**
 * Marks of gaps, with their labels. @param toWorst a button laid over the worst place's label while it is at another
 * pose, so that it can be pressed and found by keys
 */
export function gapLayer(svg: SVGSVGElement, toWorst: HTMLButtonElement): OverlayLayer {
  const group = svgElement(svg, "g");
  const marks: GapMark[] = [];
  /** Where each part's label stood off its mark in the frame before, by part, side and sort. */
  let stood = new Map<string, ScreenPoint>();
  return {
    write(view) {
      const { state, settings, truck, format, toScreen, width, height } = view;
      const worst = worstOf(truck);
      const isWorstPose = worst !== null && isAtEntry(worst, state);
      const isSeen = ({ onPart }: MarkedGap) => {
        const { x, y } = toScreen(onPart);
        return x >= 0 && x <= width && y >= 0 && y <= height;
      };
      const { allowance } = truck.setup;
      // Gaps are those of the level truck: where the stage shows it rolled they would stand in the wrong places.
      const shown =
        settings.hasLabels && settings.roll === 0
          ? gapMarks(
              shownGaps(state),
              worst,
              isWorstPose,
              state.selection,
              allowance,
              format,
              isSoFar(truck),
            ).filter(isSeen)
          : [];
      while (marks.length < shown.length) marks.push(gapMark(group));
      for (const unused of marks.slice(shown.length)) unused.hide();
      const widths = shown.map((gap, i) => marks[i]!.write(gap.text, gap.kind));
      const onPart = shown.map((gap) => toScreen(gap.onPart));
      const labelled = [...shown.keys()].filter((i) => shown[i]!.text !== "");
      const found = placeLabels(
        labelled.map((i) => onPart[i]!),
        labelled.map((i) => widths[i]!),
        {
          width,
          height,
          taken: view.taken,
          handles: settings.hasHandles ? handleStore.getState().marks : [],
        },
        labelled.map((i) => stood.get(keyOf(shown[i]!)) ?? null),
      );
      const labels = new Map(labelled.map((i, k) => [i, found[k]!]));
      stood = new Map();
      for (const [i, gap] of shown.entries()) {
        const at = labels.get(i) ?? null;
        marks[i]!.show(gap.word, onPart[i]!, toScreen(gap.onRing), at, gap.kind);
        if (at) view.taken.push({ ...at, width: widths[i]! });
        if (at) stood.set(keyOf(gap), { x: at.x - onPart[i]!.x, y: at.y - onPart[i]!.y });
      }
      const isElsewhere = shown[0]?.kind === "elsewhere";
      const label = labels.get(0);
      toWorst.hidden = !isElsewhere || !label;
      if (!isElsewhere || worst === null || !label) return;
      const { x, y } = label;
      const place = `translate(${(x - 0.5 * widths[0]!).toFixed(1)}px, ${(y - 12).toFixed(1)}px)`;
      toWorst.style.transform = place;
      toWorst.style.width = `${widths[0]}px`;
      const pose = `${heightText(worst.travel, truck.setup, format)}, ${lockText(worst.steer)}`;
      const name = `Go to the worst place: ${worst.side} ${worst.part}, ${shown[0]!.amount}, ${pose}`;
      if (toWorst.getAttribute("aria-label") !== name) toWorst.setAttribute("aria-label", name);
    },
  };
}

function keyOf({ part, side, kind }: MarkedGap): string {
  return `${kind} ${side} ${part}`;
}
