import type { ReactNode } from "react";
import type { Zero } from "../../../setup/fields/zeroOf.ts";

/** Where a point's numbers are counted from, in words that go with the sketch. */
export const ZERO_WORDS: Readonly<Record<Zero, string>> = {
  truck:
    "Zero is on the floor, on the truck's centerline, straight under the front axle line, with the truck standing as it was measured. x is forward of the axle line, − behind; y is out to the left of the centerline; z is up from the floor.",
  knuckle:
    "Zero is the center of the lower ball joint. z runs up the steering axis to the upper ball joint; y is outboard, square to it; x is forward, − behind.",
  hub: "Zero is the middle of the hub face. y runs outboard along the pin, − inboard; x is forward; z is up, square to the pin.",
  seat: "Zero is the middle of the rotor's seat, where its hat meets the hub. y runs outboard along the pin, − inboard; x is forward; z is up, square to the pin.",
  mesh: "Zero is wherever the mesh file has it: read these numbers off in the program that shows the scan.",
};

/** Which way each number of a point runs, in a word over its column. */
export const ZERO_WAYS: Readonly<Record<Zero, Readonly<Record<string, string>>>> = {
  truck: { x: "forward", y: "left", z: "up" },
  knuckle: { x: "forward", y: "out", z: "up the axis" },
  hub: { x: "forward", y: "out", z: "up" },
  seat: { x: "forward", y: "out", z: "up" },
  mesh: {},
};

const DRAWINGS: Readonly<Record<Zero, (() => ReactNode) | null>> = {
  truck: TruckZero,
  knuckle: KnuckleZero,
  hub: HubZero,
  seat: HubZero,
  mesh: null,
};

/** A small drawing of where zero is and which way each number runs; nothing for a mesh file's own. */
export function ZeroSketch({ zero }: { zero: Zero }) {
  const Drawing = DRAWINGS[zero];
  return (
    Drawing && (
      <svg className="sketch" viewBox="0 0 220 164" aria-hidden="true">
        <Drawing />
      </svg>
    )
  );
}

/** From ahead of the truck's left corner: x comes toward the eye, y goes to the right. */
function TruckZero() {
  return (
    <>
      <path className="sketch-faint" d="M14,100 L96,66 L206,104 L124,152 Z" />
      <path className="sketch-axis" d="M56,132 L166,82 M46,66 L164,112" />
      <ellipse className="sketch-part" cx={46} cy={66} rx={11} ry={25} />
      <ellipse className="sketch-part" cx={164} cy={112} rx={11} ry={25} />
      <AxisArrow from={[108, 108]} to={[62, 129]} name="x forward" at={[4, 148]} />
      <AxisArrow from={[108, 108]} to={[164, 131]} name="y left" at={[176, 150]} />
      <AxisArrow from={[108, 108]} to={[108, 40]} name="z up" at={[114, 46]} />
      <circle className="sketch-spot" cx={108} cy={108} r={6} />
      <text className="sketch-word-lit" x={114} y={102}>
        0
      </text>
      <text className="sketch-word" x={4} y={14}>
        axle line, centerline, floor
      </text>
    </>
  );
}

/** The left knuckle from the front; outboard is to the right. */
function KnuckleZero() {
  return (
    <>
      <rect className="sketch-faint" x={150} y={8} width={48} height={150} rx={14} />
      <path className="sketch-ink" d="M80,132 L62,26 M71,79 L166,86" />
      <circle className="sketch-part" cx={62} cy={26} r={6} />
      <AxisArrow from={[80, 132]} to={[69, 66]} name="z up the steering axis" at={[2, 12]} />
      <AxisArrow from={[80, 132]} to={[142, 122]} name="y outboard" at={[100, 146]} />
      <text className="sketch-word" x={4} y={158}>
        x toward you: forward
      </text>
      <circle className="sketch-spot" cx={80} cy={132} r={6} />
      <text className="sketch-word-lit" x={58} y={136}>
        0
      </text>
    </>
  );
}

/** The end of the left pin from the front; outboard is to the right. */
function HubZero() {
  return (
    <>
      <path className="sketch-ink" d="M20,72 L110,80 M114,38 L106,124" />
      <path className="sketch-axis" d="M110,80 L210,89" />
      <AxisArrow from={[110, 80]} to={[176, 86]} name="y along the pin" at={[124, 106]} />
      <AxisArrow from={[110, 80]} to={[116, 18]} name="z up" at={[122, 24]} />
      <text className="sketch-word" x={4} y={150}>
        x toward you: forward
      </text>
      <circle className="sketch-spot" cx={110} cy={80} r={6} />
      <text className="sketch-word-lit" x={92} y={98}>
        0
      </text>
    </>
  );
}

type AxisArrowProps = {
  from: readonly [number, number];
  to: readonly [number, number];
  name: string;
  at: readonly [number, number];
};

function AxisArrow({ from, to, name, at }: AxisArrowProps) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const turn = (Math.atan2(dy, dx) * 180) / Math.PI;
  return (
    <>
      <path className="sketch-lit" d={`M${from.join()} L${to.join()}`} />
      <path
        className="sketch-lit"
        d="M-8,-4.5 L0,0 L-8,4.5"
        transform={`translate(${to.join()}) rotate(${turn})`}
      />
      <text className="sketch-word" x={at[0]} y={at[1]}>
        {name}
      </text>
    </>
  );
}
