import "./wheelPicture.css";
import { useId } from "react";
import { lengthText } from "../../../studies/wording/lengths.ts";
import { gapLabel, PICTURE_NAMES, pictureWords } from "../../../studies/wording/pictureTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { BodyDrawing } from "./bodyDrawing.ts";
import { type DrawingFrame, drawingFrame, framePoints, type PictureSize } from "./drawingFrame.ts";
import { GapLeader } from "./GapLeader.tsx";
import { HubFaceDimension } from "./HubFaceDimension.tsx";
import { KnuckleLines } from "./KnuckleLines.tsx";
import { Overlap } from "./Overlap.tsx";
import { PictureNames } from "./PictureNames.tsx";
import { loopsOf, pathOf } from "./pathOf.ts";
import { pictureNames } from "./pictureNames.ts";
import type { Pictured } from "./pictures.ts";
import type { DrawingView, SheetPoint } from "./wheelDrawing.ts";

type PictureHatchesProps = {
  /** Before the names of what is defined. */
  id: string;
  /** mm to a pixel. */
  perPx: number;
  pictured: readonly Pictured[];
};

/** Pixels. */
const STEP = 6;

/** Each tire as a shape to clip by, and the hatching of what overlaps. */
function PictureHatches({ id, perPx, pictured }: PictureHatchesProps) {
  const step = STEP * perPx;
  return (
    <defs>
      {pictured.map(({ letter, drawing }) => (
        <clipPath key={letter} id={`${id}tire-${letter}`}>
          <path d={loopsOf(drawing.cut)} />
        </clipPath>
      ))}
      <pattern
        id={`${id}overlap`}
        width={step}
        height={step}
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect className="wheel-overlap-tone" width={step} height={step} />
        <path className="wheel-overlap-line" d={`M0 0V${step}`} />
      </pattern>
    </defs>
  );
}

export type WheelPictureProps = {
  view: DrawingView;
  /** What is seen, in words. */
  title: string;
  /** The first is drawn solid, the second dashed. */
  pictured: readonly Pictured[];
  body: readonly BodyDrawing[];
  /** Size it is shown at, px: letters keep their size whatever the truck's. */
  size: PictureSize;
  format: LengthFormat;
  /** mm that the outer edge may yet move. Default 0. */
  slack?: number;
  /** Points that must be in sight beside the wheels shown, so that nothing shifts as they turn. */
  around?: readonly SheetPoint[];
};

/** Pixels from the wheel's foot to the first hub face dimension, and to the next. */
const DIMENSION_AT = [24, 50] as const;
const FONT = 15;
/** Pixels between two labels, one below the other. */
const LABEL_STEP = 62;
const NO_POINTS: readonly SheetPoint[] = [];

/**
 * Wheel, knuckle and body cut by a plane: what touches there overlaps on the picture, and nothing else crosses. What lies past the
 * plane is thin and hidden by the tire.
 */
export function WheelPicture(props: WheelPictureProps) {
  const { view, title, pictured, body, size, format, slack = 0, around = NO_POINTS } = props;
  const id = useId();
  const isFront = view === "front";
  const points = [...pictured.flatMap(({ drawing }) => framePoints(drawing)), ...around];
  const frame = drawingFrame(points, isFront, size, slack);
  const { perPx, left, top, width, height } = frame;
  const [first] = pictured;
  const firstV = first?.drawing.gap?.onPart[1] ?? top;
  const lowest = top + height - (LABEL_STEP * pictured.length + 40) * perPx;
  const labelTop = Math.max(top + 20 * perPx, Math.min(firstV - 20 * perPx, lowest));
  return (
    <svg
      className="wheel-picture"
      viewBox={`${left} ${top} ${width} ${height}`}
      role="img"
      aria-label={`${title}. ${pictured.map((one) => pictureWords(one, format)).join(" ")}`}
      style={{ fontSize: FONT * perPx }}
    >
      <PictureHatches id={id} perPx={perPx} pictured={pictured} />
      {body.flatMap(({ name, beyond, before }) =>
        [...beyond, ...(isFront ? [] : before)].map(({ points: line, isClosed }, i) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name of their own and keep their order
            key={`${name} ${i}`}
            className={i < beyond.length ? "wheel-beyond" : "wheel-before"}
            d={pathOf(line, isClosed)}
          />
        )),
      )}
      {isFront && first && (
        <path className="wheel-floor" d={`M${left} ${first.drawing.contactPatch[1]}h${width}`} />
      )}
      {/* What lies behind any of the tires is hidden. */}
      {pictured.map(({ letter, drawing }) => (
        <path key={letter} className="wheel-cover" d={loopsOf([drawing.wheel, ...drawing.cut])} />
      ))}
      {[...pictured].reverse().map(({ letter, drawing }) => (
        <g key={letter} className={`wheel-${letter}`}>
          <path className="wheel-inside" d={pathOf(drawing.wheel, true)} />
          <path className="wheel-tire" d={loopsOf(drawing.cut)} />
          <KnuckleLines drawing={drawing} perPx={perPx} />
        </g>
      ))}
      {body.flatMap(({ name, cuts }) =>
        cuts.map(({ points: line, isClosed }, i) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name of their own and keep their order
            key={`${name} ${i}`}
            className={isClosed ? "wheel-body" : "wheel-body-edge"}
            d={pathOf(line, isClosed)}
          />
        )),
      )}
      {pictured.map((one) => (
        <Overlap key={one.letter} pictured={one} body={body} id={id} perPx={perPx} />
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
      {first && <PictureNames names={pictureNames(view, first, body, frame)} frame={frame} />}
      {!isFront && <TruckFront frame={frame} />}
      {pictured.map(({ letter, drawing, mark, allowance }, i) => {
        if (!mark || !drawing.gap) return null;
        const label = gapLabel(mark.entry.gap, allowance, format);
        const at = [frame.labels, labelTop + i * LABEL_STEP * perPx] as const;
        return (
          <GapLeader key={letter} gap={drawing.gap} label={label} letter={letter} at={at} perPx={perPx} />
        );
      })}
    </svg>
  );
}

/** Says which way the truck drives on a picture from above: down the sheet. */
function TruckFront({ frame: { left, top, width, height, perPx } }: { frame: DrawingFrame }) {
  const [u, v] = [left + 0.5 * width, top + height - 14 * perPx];
  return (
    <g className="wheel-front">
      <path d="M-6 -7H6L0 6Z" transform={`translate(${u - 66 * perPx} ${v}) scale(${perPx})`} />
      <text x={u - 54 * perPx} y={v} dy="0.35em">
        {PICTURE_NAMES.front}
      </text>
    </g>
  );
}
