import type { Vec3 } from "../../geometry/vec.ts";
import { asAssumed, gapMarks, type MarkedGap, withSides } from "../../studies/wording/gapRows.ts";
import { heightText, lockText } from "../../studies/wording/poseWords.ts";
import { shownGaps } from "../state/shown.ts";
import { waitingFor } from "../state/useWaitingFor.ts";
import { handleStore } from "./handles/handleStore.ts";
import { type GapMark, gapMark } from "./overlay/gapMark.ts";
import { fittingText, labelKeeper } from "./overlay/labelKeeper.ts";
import { svgElement } from "./overlay/svgElement.ts";
import type { OverlayLayer, OverlayView } from "./overlayLayer.ts";
import { wheelsSeen } from "./wheelsSeen.ts";
import { isAtEntry, isSoFar, uncountedNow, worstOf } from "./worst.ts";

/** Places of the truck that tell from where it is seen; mm. */
const FIXED: readonly Vec3[] = [
  [0, 0, 0],
  [1000, 0, 0],
  [0, 1000, 0],
  [0, 0, 1000],
];

/** Share of a picture's width that is left to labels among points to move: longer ones would be led far past them. */
const AMONG_HANDLES = 0.5;

/**
 * Marks of gaps, with their labels. @param toWorst a button laid over the worst place's label while it is at another
 * pose, so that it can be pressed and found by keys
 */
export function gapLayer(svg: SVGSVGElement, toWorst: HTMLButtonElement): OverlayLayer {
  const group = svgElement(svg, "g");
  const marks: GapMark[] = [];
  const place = labelKeeper();
  return {
    write(view) {
      const { state, settings, truck, format, toScreen, width, height } = view;
      const worst = worstOf(truck);
      const isWorstPose = worst !== null && isAtEntry(worst, state);
      const isWell = state.view === "well";
      const isSeen = ({ onPart, side }: MarkedGap) => {
        const { x, y } = toScreen(onPart);
        // In a wheel well the other wheel is behind the eye.
        if (isWell && side !== settings.side) return false;
        return x >= 0 && x <= width && y >= 0 && y <= height;
      };
      const { allowance } = truck.setup;
      // Gaps are those of the level truck: where the stage shows it rolled they would stand in the wrong places.
      const marked =
        settings.hasLabels && settings.roll === 0
          ? gapMarks(
              shownGaps(state),
              worst,
              isWorstPose,
              state.selection,
              allowance,
              format,
              isSoFar(truck),
              uncountedNow(truck, state),
            ).filter(isSeen)
          : [];
      const sided = !isWell && isFromSide(view) ? withSides(marked, shownGaps(state)) : marked;
      const shown = waitingFor(state) ? asAssumed(sided) : sided;
      while (marks.length < shown.length) marks.push(gapMark(group));
      for (const unused of marks.slice(shown.length)) unused.hide();
      const widths = shown.map((gap, i) => {
        const write = (text: string) => marks[i]!.write(text, gap.kind);
        return write(fittingText(gap, write, settings.hasHandles ? AMONG_HANDLES * width : width));
      });
      const onPart = shown.map((gap) => toScreen(gap.onPart));
      const labelled = [...shown.keys()].filter((i) => shown[i]!.text !== "");
      const found = place(
        labelled.map((i) => ({
          key: keyOf(shown[i]!),
          ...(shown[i]!.kind === "elsewhere" ? { role: "worst" } : {}),
          mark: onPart[i]!,
          width: widths[i]!,
        })),
        {
          width,
          height,
          taken: view.taken,
          marks: onPart,
          covers: wheelsSeen(truck, toScreen),
          handles: settings.hasHandles ? handleStore.getState().marks : [],
        },
        FIXED.map(toScreen),
        `${state.view} ${settings.side} ${state.viewsAsked}`,
      );
      const labels = new Map(labelled.map((i, k) => [i, found[k]!]));
      for (const [i, gap] of shown.entries()) {
        const at = labels.get(i) ?? null;
        marks[i]!.show(gap.word, onPart[i]!, toScreen(gap.onRing), at, gap.kind);
        if (at) view.taken.push({ ...at, width: widths[i]! });
      }
      const isElsewhere = shown[0]?.kind === "elsewhere";
      const label = labels.get(0);
      toWorst.hidden = !isElsewhere || !label;
      if (!isElsewhere || worst === null || !label) return;
      const { x, y } = label;
      const moved = `translate(${(x - 0.5 * widths[0]!).toFixed(1)}px, ${(y - 12).toFixed(1)}px)`;
      toWorst.style.transform = moved;
      toWorst.style.width = `${widths[0]}px`;
      const pose = `${heightText(worst.travel, truck.setup, format)}, ${lockText(worst.steer)}`;
      const name = `Go to the worst place: ${worst.side} ${worst.part}, ${shown[0]!.amount}, ${pose}`;
      if (toWorst.getAttribute("aria-label") !== name) toWorst.setAttribute("aria-label", name);
    },
  };
}

/** Share of the way across the truck that is seen of it; where it is less, one wheel stands before the other. */
const SEEN_APART = 0.6;

function isFromSide({ toScreen, zoom }: OverlayView): boolean {
  const [o, y] = [toScreen([0, 0, 0]), toScreen([0, 1000, 0])];
  return Math.hypot(y.x - o.x, y.y - o.y) < SEEN_APART * 1000 * zoom;
}

/** One label a part and side, whichever pose it tells of. */
function keyOf({ part, side }: MarkedGap): string {
  return `${side} ${part}`;
}
