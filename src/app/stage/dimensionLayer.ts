import { shownPose } from "../state/shown.ts";
import { otherPose, otherTruck } from "./otherTruck.ts";
import { type DimensionMark, dimensionMark } from "./overlay/dimensionMark.ts";
import { type Dimension, type DimensionInputs, dimensionsAt } from "./overlay/dimensions.ts";
import type { ScreenPoint } from "./overlay/gapMark.ts";
import { knuckleDimensions } from "./overlay/knuckleDimensions.ts";
import { layOutDimension } from "./overlay/layOutDimension.ts";
import { standFree } from "./overlay/standFree.ts";
import { svgElement } from "./overlay/svgElement.ts";
import type { OverlayLayer, OverlayView } from "./overlayLayer.ts";
import { isAtEntry, worstDimension, worstOf } from "./worst.ts";

/** Pixels. In a picture no wider, small dimensions would lie on each other; their numbers stand in the tables. */
const NARROW = 480;

/** Pixels that a label is high, with what it keeps free. */
const LINE = 19;

/** Dimensions of the truck, or of its knuckle alone, drawn as a drawing has them. */
export function dimensionLayer(svg: SVGSVGElement, isAlone: boolean): OverlayLayer {
  const group = svgElement(svg, "g");
  const marks: DimensionMark[] = [];
  return {
    write(view) {
      const dimensions = isAlone
        ? dimensionsAlone(view)
        : view.settings.hasDimensions && view.settings.roll === 0
          ? shownDimensions(view)
          : [];
      const { width: wide, height, taken } = view;
      const room = { width: wide, height, taken, marks: isAlone ? [] : marksOf(view) };
      while (marks.length < dimensions.length) marks.push(dimensionMark(group));
      for (const [i, mark] of marks.entries()) {
        const dimension = dimensions[i];
        const width = dimension ? mark.write(dimension.text) : 0;
        const layout = dimension ? layOutDimension(dimension, view, width) : null;
        if (layout) {
          mark.show({ ...layout, label: standFree(layout.label, width, LINE, room) });
          view.lines.push(...layout.lines);
        } else mark.hide();
      }
    },
  };
}

function dimensionsAlone({ truck, state, settings, format }: OverlayView): Dimension[] {
  const pose = shownPose(state);
  return pose?.ok ? knuckleDimensions({ truck, pose, side: settings.side, format }) : [];
}

function shownDimensions({ truck, state, settings, format, width }: OverlayView) {
  const pose = shownPose(state);
  if (!pose?.ok) return [];
  const below = state.good?.variant == null ? null : otherTruck(state, null);
  const base = below && otherPose(below, state);
  const isWell = state.view === "well";
  const inputs: DimensionInputs = { truck, pose, side: settings.side, format, base };
  const isNarrow = width < NARROW;
  // Where the mark of the gap says it already, a narrow picture has no room to say it twice.
  const worst = isNarrow && settings.hasLabels ? null : worstDimension(state, truck.setup.allowance, format);
  // In the wheel well the other wheel is out of the picture, and so is the way to it.
  const shown = dimensionsAt(inputs)
    .slice(0, isWell ? -1 : undefined)
    .filter(({ isSmall }) => !(isNarrow && isSmall));
  return worst ? [...shown, worst] : shown;
}

/** Where the worst place of all is marked, while it is at another pose. */
function marksOf({ truck, state, settings, toScreen }: OverlayView): ScreenPoint[] {
  const worst = settings.hasLabels && settings.roll === 0 ? worstOf(truck) : null;
  return worst && !isAtEntry(worst, state) ? [toScreen(worst.point)] : [];
}
