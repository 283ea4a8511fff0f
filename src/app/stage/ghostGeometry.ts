import { BufferGeometry, Float32BufferAttribute } from "three";
import type { TireRing } from "../../gaps/tire/tireOf.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { hubToKnuckle } from "./knuckleGeometry.ts";
import { ringCircles } from "./lineGeometry.ts";

/** A polyline, x, y, z one after another. */
type Line = number[];

const ROUND = 72;
/** Half sections of the tire that are outlined, evenly about its axis. */
const SECTIONS = 8;
const FLANGE = 76;

/** Outlines of a tire and rim about y: its circles, its widest lines, and half sections. */
export function ghostWheelGeometry({ profile, barrelRadius }: TireRing): BufferGeometry {
  const circles = ringCircles(profile);
  const widest = [0, profile.length - 2];
  for (let i = 0; i < profile.length; i += 2) {
    if (profile[i]! < profile[widest[0]!]!) widest[0] = i;
    if (profile[i]! > profile[widest[1]!]!) widest[1] = i;
  }
  for (const i of widest) circles.push(profile[i]!, profile[i + 1]!);
  circles.push(profile[profile.length - 2]!, barrelRadius);
  const lines: Line[] = [];
  for (let i = 0; i + 1 < circles.length; i += 2) lines.push(circle(circles[i]!, circles[i + 1]!));
  for (let k = 0; k < SECTIONS; k++) {
    const [cos, sin] = [Math.cos((2 * Math.PI * k) / SECTIONS), Math.sin((2 * Math.PI * k) / SECTIONS)];
    const line: Line = [];
    for (let i = 0; i + 1 < profile.length; i += 2) {
      line.push(profile[i + 1]! * cos, profile[i]!, profile[i + 1]! * sin);
    }
    lines.push(line);
  }
  return dashable(lines);
}

/** Outlines of a knuckle in its own frame: ball joint to ball joint, pin, mounting face, steering arm. */
export function ghostKnuckleGeometry(knuckle: KnuckleSetup): BufferGeometry {
  const { span, pinHeight, pinLead, hubFace, steeringArm } = knuckle;
  const geometry = dashable([[0, -hubFace, 0, 0, 0, 0], circle(0, FLANGE), circle(-10, FLANGE)]).applyMatrix4(
    hubToKnuckle(knuckle),
  );
  const own = dashable([
    [0, 0, 0, 0, 0, span],
    [0, 0, pinHeight, pinLead, 0, pinHeight],
    [0, 0, Math.min(Math.max(steeringArm[2], 0), span), ...steeringArm],
  ]);
  return joined(geometry, own);
}

function circle(y: number, r: number): Line {
  const line: Line = [];
  for (let k = 0; k <= ROUND; k++) {
    const angle = (2 * Math.PI * k) / ROUND;
    line.push(r * Math.cos(angle), y, r * Math.sin(angle));
  }
  return line;
}

/** Polylines as segments, with the way along each from its beginning, so that dashes run through its corners. */
function dashable(lines: readonly Line[]): BufferGeometry {
  const positions: number[] = [];
  const along: number[] = [];
  for (const line of lines) {
    let way = 0;
    for (let i = 0; i + 5 < line.length; i += 3) {
      const step = Math.hypot(
        line[i + 3]! - line[i]!,
        line[i + 4]! - line[i + 1]!,
        line[i + 5]! - line[i + 2]!,
      );
      positions.push(...line.slice(i, i + 6));
      along.push(way, way + step);
      way += step;
    }
  }
  return new BufferGeometry()
    .setAttribute("position", new Float32BufferAttribute(positions, 3))
    .setAttribute("lineDistance", new Float32BufferAttribute(along, 1));
}

function joined(a: BufferGeometry, b: BufferGeometry): BufferGeometry {
  const both = new BufferGeometry();
  for (const [name, size] of [
    ["position", 3],
    ["lineDistance", 1],
  ] as const) {
    const values = [...a.getAttribute(name).array, ...b.getAttribute(name).array];
    both.setAttribute(name, new Float32BufferAttribute(values, size));
  }
  a.dispose();
  b.dispose();
  return both;
}
