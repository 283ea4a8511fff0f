import { mirrorY, normalize, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import type { Side } from "../../../src/suspension/frontEnd.ts";
import type { DrawnTruck } from "./drawnTruck.ts";
import { METERS_PER_MM } from "./engine.ts";
import { mechanismXml } from "./mechanismXml.ts";

/** m. A disk as thin as this has its edge where the wheel plane's circle is, to a nanometer. */
const HALF_THICKNESS = 1e-9;

/** Seen without being pushed: contacts are found within the margin and act only past it less the gap. */
const SEEN = 'margin="1" gap="1"';
const WHEEL = `${SEEN} contype="1" conaffinity="2"`;
const FLOOR = `${SEEN} contype="2" conaffinity="1"`;

/**
 * `mechanismXml` with a thin disk of `radius` (mm) about each wheel's axis, `left.wheel` and `right.wheel`, over a plane
 * `floor` on a mocap body, at first 5 m down. They see each other and nothing else, and do not push while they are apart.
 */
export function wheelsOverFloorXml(truck: DrawnTruck, radius: number): string {
  const wheel = (side: Side, at: (v: Vec3) => Vec3) => {
    const center = sub(at(truck.wheelCenter), at(truck.lowerBallJoint));
    const place = center.map((c) => c * METERS_PER_MM).join(" ");
    const axis = at(normalize(truck.spinAxis)).join(" ");
    const size = `${radius * METERS_PER_MM} ${HALF_THICKNESS}`;
    return `<geom name="${side}.wheel" type="cylinder" size="${size}" pos="${place}" zaxis="${axis}" ${WHEEL}/>`;
  };
  const before = (xml: string, mark: string, text: string) => {
    if (!xml.includes(mark)) throw new RangeError(`wheelsOverFloorXml: the mechanism has no ${mark}`);
    return xml.replace(mark, `${text}\n${mark}`);
  };
  let xml = mechanismXml(truck);
  xml = before(
    xml,
    '<site name="left.wheelCenter"',
    wheel("left", (v) => v),
  );
  xml = before(xml, '<site name="right.wheelCenter"', wheel("right", mirrorY));
  const plane = `<geom name="floor" type="plane" size="0 0 1" ${FLOOR}/>`;
  return before(xml, "</worldbody>", `<body name="floor" mocap="true" pos="0 0 -5">${plane}</body>`);
}
