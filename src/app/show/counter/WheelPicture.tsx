import "./wheelPicture.css";
import { useId } from "react";
import { PICTURE_NAMES, pictureWords } from "../../../studies/wording/pictureTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { BodyDrawing } from "./bodyDrawing.ts";
import { type DrawingFrame, drawingFrame, framePoints, type PictureSize } from "./drawingFrame.ts";
import { GapLeader } from "./GapLeader.tsx";
import { HubFaceDimension } from "./HubFaceDimension.tsx";
import { KnuckleLines } from "./KnuckleLines.tsx";
import { Overlap } from "./Overlap.tsx";
import { PictureNames, TextLines } from "./PictureNames.tsx";
import { loopsOf, pathOf } from "./pathOf.ts";
import { pictureLayout } from "./pictureLayout.ts";
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

/** Each tire as a shape to clip by, and the hatching of what it overlaps: of A and B slanted apart, so that both are seen. */
function PictureHatches({ id, perPx, pictured }: PictureHatchesProps) {
  const step = STEP * perPx;
  return (
    <defs>
      {pictured.map(({ letter, drawing }) => (
        <clipPath key={letter} id={`${id}tire-${letter}`}>
          <path d={loopsOf(drawing.cut)} />
        </clipPath>
      ))}
      {pictured.map(({ letter }) => (
        <pattern
          key={letter}
          id={`${id}overlap-${letter}`}
          width={step}
          height={step}
          patternUnits="userSpaceOnUse"
          patternTransform={`rotate(${letter === "A" ? 45 : -45})`}
        >
          <rect className="wheel-overlap-tone" width={step} height={step} />
          <path className="wheel-overlap-line" d={`M0 0V${step}`} />
        </pattern>
      ))}
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
  /** Points that must be in sight beside the wheels shown, so that nothing shifts as they move. */
  around: readonly SheetPoint[];
};

/**
 * Wheel, knuckle and body cut by a plane: what touches there overlaps on the picture, and nothing else crosses. What lies past the
 * plane is thin and hidden by the tire.
 */
export function WheelPicture(props: WheelPictureProps) {
  const { view, title, pictured, body, size, format, around } = props;
  const id = useId();
  const isFront = view === "front";
  const wheels = pictured.flatMap(({ drawing }) => framePoints(drawing, isFront));
  const frame = drawingFrame([...wheels, ...around], isFront, size);
  const { perPx, left, top, width, height, inner } = frame;
  const [first] = pictured;
  const { names, gaps, dimensions } = pictureLayout(view, pictured, body, frame, format);
  return (
    <svg
      className="wheel-picture"
      viewBox={`${left} ${top} ${width} ${height}`}
      role="img"
      aria-label={`${title} ${pictured.map((one) => pictureWords(one, format)).join(" ")}`}
    >
      <PictureHatches id={id} perPx={perPx} pictured={pictured} />
      <clipPath id={`${id}inner`}>
        <rect
          x={left + inner.left * perPx}
          y={top + inner.top * perPx}
          width={Math.max(0, inner.right - inner.left) * perPx}
          height={Math.max(0, inner.foot - inner.top) * perPx}
        />
      </clipPath>
      <g clipPath={`url(#${id}inner)`}>
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
          pictured.map(({ letter, drawing }, i) => (
            <HubFaceDimension key={letter} drawing={drawing} frame={frame} place={i} />
          ))}
      </g>
      {/* In pixels: letters keep their size whatever the truck's. */}
      <g transform={`translate(${left} ${top}) scale(${perPx})`}>
        {dimensions.map((one) => (
          <TextLines key={one.lines[0]} {...one} kind="gap" />
        ))}
        <PictureNames names={names} />
        {!isFront && <TruckFront frame={frame} />}
        {gaps.map((placed) => (
          <GapLeader key={placed.letter} placed={placed} labels={frame.labels} />
        ))}
      </g>
    </svg>
  );
}

/** Pixels from the foot. */
const FRONT_AT = 14;

/** Says which way the truck drives on a picture from above: down the sheet. */
function TruckFront({ frame: { inner, size } }: { frame: DrawingFrame }) {
  const [x, y] = [0.5 * (inner.left + inner.right), size.height - FRONT_AT];
  return (
    <g className="wheel-front">
      <path d="M-6 -7H6L0 6Z" transform={`translate(${x - 66} ${y})`} />
      <TextLines lines={[PICTURE_NAMES.front]} x={x - 54} y={y} kind="name" />
    </g>
  );
}
