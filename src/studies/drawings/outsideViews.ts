import type { PageLine } from "../../geometry/page.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import { pointOnPin } from "../../setup/types/jointPlaces.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { SolidBody } from "../knuckleSolid/knuckleSolid.ts";
import { projectedView } from "../views/hiddenLines.ts";
import { seenAt, VIEWS, type ViewName } from "../views/viewAxes.ts";
import { viewTitle } from "../wording/drawingWords.ts";
import type { Dimension } from "./dimensions.ts";
import { type Bounds, boundsOf, type DrawnView } from "./drawnView.ts";

/** mm of the knuckle. Axes are drawn this much past it. */
const PAST = 12;
/** mm, rad. What reads as nothing has no dimension. */
const NOTHING = 1e-3;

type Place = readonly [number, number];

/** A view of the left knuckle from outside, with the dimensions of the knuckle block that lie square to it. */
export function outsideView(
  name: ViewName,
  bodies: readonly SolidBody[],
  knuckle: KnuckleSetup,
  format: LengthFormat,
): DrawnView {
  const { seen, hidden } = projectedView(
    bodies.map(({ mesh }) => mesh),
    VIEWS[name],
  );
  const bounds = boundsOf([...seen, ...hidden]);
  return {
    name,
    title: viewTitle(name),
    lines: [
      ...hidden.map((points) => ({ pen: "hidden" as const, points })),
      ...seen.map((points) => ({ pen: "outline" as const, points })),
      ...axisLine(name, [0, 0, 0], [0, 0, knuckle.span]),
      ...axisLine(name, pointOnPin(knuckle, 0), pointOnPin(knuckle, knuckle.hubFace)),
    ],
    dimensions: dimensionsOf(name, knuckle, bounds, format),
    bounds,
    ...(name === "side" ? { cutAt: -knuckle.pinLead } : {}),
  };
}

/** From point to point and a little past; a cross where it is seen end on. */
function axisLine(name: ViewName, from: Vec3, to: Vec3): PageLine[] {
  const [[u0, v0], [u1, v1]] = [seenAt(VIEWS[name], from), seenAt(VIEWS[name], to)];
  const size = Math.hypot(u1 - u0, v1 - v0);
  if (size < PAST) {
    return [
      { pen: "center", points: [u0 - PAST, v0, u0 + PAST, v0] },
      { pen: "center", points: [u0, v0 - PAST, u0, v0 + PAST] },
    ];
  }
  const [du, dv] = [(PAST * (u1 - u0)) / size, (PAST * (v1 - v0)) / size];
  return [{ pen: "center", points: [u0 - du, v0 - dv, u1 + du, v1 + dv] }];
}

function dimensionsOf(
  name: ViewName,
  knuckle: KnuckleSetup,
  [, , u1]: Bounds,
  format: LengthFormat,
): Dimension[] {
  const linear = (along: "u" | "v", to: Place, side: "low" | "high", from: Place = [0, 0]): Dimension[] => {
    const mm = Math.abs(along === "u" ? to[0] - from[0] : to[1] - from[1]);
    return mm > NOTHING ? [{ kind: "linear", along, from, to, side, text: formatLength(mm, format) }] : [];
  };
  const { pinHeight, pinAngle, pinLead, span } = knuckle;
  const [x, y, z] = knuckle.steeringArm;
  switch (name) {
    case "front":
      return [
        ...linear("v", [0, pinHeight], "low"),
        ...linear("v", [0, span], "low"),
        ...(Math.abs(pinAngle) > NOTHING
          ? [
              {
                kind: "angle" as const,
                center: [0, pinHeight] as const,
                radius: u1 + PAST,
                from: 0,
                to: -pinAngle,
                text: formatAngle(pinAngle),
              },
            ]
          : []),
      ];
    case "side":
      // On the side where the tie rod end is, so that no extension line runs over the other's.
      return [...linear("v", [-x, z], x < 0 ? "high" : "low"), ...linear("u", [-pinLead, pinHeight], "high")];
    case "top":
      return [
        ...linear("v", [y, -x], y < 0 ? "low" : "high"),
        ...linear("u", [y, -x], x < 0 ? "high" : "low"),
      ];
  }
}
