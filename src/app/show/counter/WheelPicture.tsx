import "./wheelPicture.css";
import { useId } from "react";
import { lengthText } from "../../../studies/wording/lengths.ts";
import type { PictureFacts } from "../../../studies/wording/pictureFacts.ts";
import { gapLabel, pictureWords } from "../../../studies/wording/pictureTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { BodyLine } from "./bodyDrawing.ts";
import { drawingFrame } from "./drawingFrame.ts";
import { GapLeader } from "./GapLeader.tsx";
import { HubFaceDimension } from "./HubFaceDimension.tsx";
import { KnuckleLines } from "./KnuckleLines.tsx";
import { pathOf } from "./pathOf.ts";
import type { DrawingView, WheelDrawing } from "./wheelDrawing.ts";

/** One of the trucks on a picture. */
export interface Pictured extends PictureFacts {
  readonly letter: "A" | "B";
  readonly name: string;
  readonly drawing: WheelDrawing;
  /** mm. */
  readonly hubFace: number;
  /** mm. */
  readonly allowance: number;
}

export type WheelPictureProps = {
  view: DrawingView;
  /** What is seen, in words. */
  title: string;
  /** The first is drawn solid, the second dashed. */
  pictured: readonly Pictured[];
  body: readonly BodyLine[];
  /** Width it is shown at, px: letters keep their size whatever the truck's. */
  width: number;
  format: LengthFormat;
  /** mm that the outer edge may yet move. Default 0. */
  slack?: number;
};

/** Pixels from the wheel's foot to the first hub face dimension, and to the next. */
const DIMENSION_AT = [30, 60] as const;
const FONT = 16;
/** Pixels between two labels, one below the other. */
const LABEL_STEP = 58;

/** A drawing of wheel, knuckle and body, with the gap and, from the front, the hub face distance. */
export function WheelPicture({ view, title, pictured, body, width, format, slack = 0 }: WheelPictureProps) {
  const hatch = useId();
  const isFront = view === "front";
  const frame = drawingFrame(
    pictured.map(({ drawing }) => drawing),
    isFront,
    width,
    slack,
  );
  const { perPx, left, top, right, bottom } = frame;
  const [first] = pictured;
  const labels = pictured.map(({ mark, allowance }) =>
    mark ? gapLabel(mark.entry.gap, allowance, format) : null,
  );
  const firstV = pictured[0]?.drawing.gap?.onPart[1] ?? top;
  const labelTop = Math.max(top + 26 * perPx, Math.min(firstV, bottom - 3 * LABEL_STEP * perPx));
  return (
    <svg
      className="wheel-picture"
      viewBox={`${left} ${top} ${right - left} ${bottom - top}`}
      role="img"
      aria-label={`${title}. ${pictured.map((one) => pictureWords(one, format)).join(" ")}`}
      style={{ fontSize: FONT * perPx }}
    >
      <defs>
        <pattern
          id={hatch}
          width={9 * perPx}
          height={9 * perPx}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path className="wheel-hatch" d={`M0 0V${9 * perPx}`} />
        </pattern>
      </defs>
      {body.map((line, i) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name of their own and keep their order
          key={i}
          className={bodyClass(line)}
          d={pathOf(line.points, line.isClosed)}
          style={line.thickness > 0 ? { strokeWidth: Math.max(line.thickness, 3 * perPx) } : undefined}
        />
      ))}
      {isFront && first && (
        <path className="wheel-floor" d={`M${left} ${first.drawing.contactPatch[1]}H${right}`} />
      )}
      {pictured.map(({ letter, drawing }) => (
        <g key={letter} className={`wheel-${letter}`}>
          <path className="wheel-outline" d={pathOf(drawing.outline, true)} />
          {letter === "A" && <path className="wheel-rim" d={pathOf(drawing.rim, true)} />}
          {letter === "A" &&
            drawing.sections.map((section) => (
              <path
                key={section[0]!.join()}
                className="wheel-section"
                fill={`url(#${hatch})`}
                d={pathOf(section, true)}
              />
            ))}
          <KnuckleLines drawing={drawing} perPx={perPx} />
        </g>
      ))}
      {isFront &&
        pictured.map(({ letter, drawing, hubFace }, i) => (
          <HubFaceDimension
            key={letter}
            drawing={drawing}
            at={frame.foot + DIMENSION_AT[i === 0 ? 0 : 1] * perPx}
            perPx={perPx}
            text={`${letter} ${lengthText(hubFace, format)}`}
          />
        ))}
      {pictured.map(({ letter, drawing }, i) => {
        const label = labels[i];
        if (!label || !drawing.gap) return null;
        return (
          <GapLeader
            key={letter}
            gap={drawing.gap}
            {...{ label, letter }}
            at={[frame.labels, labelTop + i * LABEL_STEP * perPx]}
            perPx={perPx}
          />
        );
      })}
    </svg>
  );
}

function bodyClass({ thickness, isClosed }: BodyLine): string {
  return thickness > 0 ? "wheel-body-path" : isClosed ? "wheel-body" : "wheel-body-edge";
}
