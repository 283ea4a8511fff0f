import { hatchLines } from "../../geometry/hatchLines.ts";
import type { PageLine } from "../../geometry/page.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { SolidBody } from "../knuckleSolid/knuckleSolid.ts";
import { slicedBodies } from "../views/viewAxes.ts";
import { pinLengthWords, pinStepWords, sectionTitle } from "../wording/drawingWords.ts";
import { clipped } from "./clipped.ts";
import type { Dimension } from "./dimensions.ts";
import { type Bounds, boundsOf, type DrawnView } from "./drawnView.ts";

/** Half the height of what is shown of the knuckle, in radii of the pin's thickest step. */
const SHOWN = 1.8;
/** mm. Without a pin. */
const SHOWN_WITHOUT = 60;
/** mm of the knuckle. */
const PAST = 12;
/** mm of paper. The innermost leader ends this far over the view, each one outboard of it a row farther: so none meets another's words. */
const OVER = 5;
const ROW = 5.5;
/** mm of the knuckle: leaders point at a step near its outer end, where nothing is welded to it. */
const NEAR_END = 8;

/**
 * The knuckle cut along the pin's axis, square to the view from the front and seen from there, turned so that the pin lies level:
 * u along the pin from the steering axis, v square to it. Only what lies near the pin is shown. @param scale paper for knuckle
 */
export function pinSection(
  bodies: readonly SolidBody[],
  { pin }: BuildSetup,
  knuckle: KnuckleSetup,
  format: LengthFormat,
  scale: number,
): DrawnView {
  const steps = pin?.steps ?? [];
  const half =
    steps.length > 0 ? (SHOWN * Math.max(...steps.map(({ diameter }) => diameter))) / 2 : SHOWN_WITHOUT;
  const sliced = slicedBodies(
    bodies.map(({ mesh }) => mesh),
    knuckle.pinLead,
  ).map((outlines) => outlines.map((points) => turnedLevel(points, knuckle)));
  const all = sliced.flatMap((outlines, i): PageLine[] => [
    ...outlines.map((points) => ({ pen: "outline" as const, points, closed: true })),
    ...hatched(outlines, i, scale),
  ]);
  const reach = Math.max(knuckle.hubFace, ...steps.map(({ to }) => to)) + PAST;
  const root = Math.min(0, ...steps.map(({ from }) => from)) - half;
  const shown = clipped({ lines: all, circles: [], texts: [] }, [root, -half, reach, half]).lines;
  const bounds: Bounds =
    shown.length > 0 ? boundsOf(shown.map(({ points }) => points)) : [root, -half, reach, half];
  const [cos, sin] = [Math.cos(knuckle.pinAngle), Math.sin(knuckle.pinAngle)];
  const axis = (half + PAST) / cos;
  return {
    name: "section",
    title: sectionTitle(knuckle.pinAngle),
    lines: [
      ...shown,
      { pen: "center", points: [bounds[0] - PAST, 0, bounds[2] + PAST, 0] },
      {
        pen: "center",
        points: [-axis * sin, -axis * cos, axis * sin, axis * cos].map((value, i) =>
          i % 2 === 0 ? -value : value,
        ),
      },
    ],
    dimensions: [...lengthsOf(steps, knuckle, format), ...diametersOf(steps, half, format, scale)],
    bounds,
  };
}

type Steps = NonNullable<BuildSetup["pin"]>["steps"];

/** From the steering axis along the pin to the hub face and to the end of each step. */
function lengthsOf(steps: Steps, { hubFace }: KnuckleSetup, format: LengthFormat): Dimension[] {
  const ends = steps.map(({ to, diameter }) => ({ to, radius: diameter / 2 }));
  const isEnd = ends.some(({ to }) => Math.abs(to - hubFace) < 1e-3);
  const face = steps.find(({ from, to }) => from <= hubFace && hubFace <= to);
  const all = isEnd ? ends : [...ends, { to: hubFace, radius: (face?.diameter ?? 0) / 2 }];
  return all.map(({ to, radius }) => ({
    kind: "linear",
    along: "u",
    from: [0, 0],
    to: [to, -radius],
    side: "low",
    text: pinLengthWords(to, hubFace, format),
  }));
}

function diametersOf(steps: Steps, half: number, format: LengthFormat, scale: number): Dimension[] {
  return steps.map(({ from, to, diameter, fillet }, i) => ({
    kind: "leader",
    at: [to - Math.min(NEAR_END, (to - from) / 2), diameter / 2],
    toward: [-3, (half - diameter / 2) * scale + OVER + i * ROW],
    text: pinStepWords(diameter, fillet, format),
  }));
}

function turnedLevel(points: Float64Array, { pinAngle, pinHeight }: KnuckleSetup): Float64Array {
  const [cos, sin] = [Math.cos(pinAngle), Math.sin(pinAngle)];
  const turned = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 2) {
    const [y, z] = [points[i]!, points[i + 1]! - pinHeight];
    turned[i] = y * cos - z * sin;
    turned[i + 1] = y * sin + z * cos;
  }
  return turned;
}

/** Neighbors in the list lean opposite ways, and every second pair is farther apart. */
function hatched(outlines: readonly Float64Array[], i: number, scale: number): PageLine[] {
  if (outlines.length === 0) return [];
  const apart = (1.6 + 0.6 * (i >> 1)) / scale;
  const lean = (i % 2 === 0 ? 1 : -1) * (Math.PI / 4);
  const lines = hatchLines(outlines, apart, lean);
  return Array.from({ length: lines.length / 4 }, (_, i) => ({
    pen: "hatch",
    points: lines.slice(4 * i, 4 * i + 4),
  }));
}
