import { loopsOf } from "./pathOf.ts";
import type { Pictured } from "./pictured.ts";

export type PictureHatchesProps = {
  /** Before the names of what is defined. */
  id: string;
  /** mm to a pixel. */
  perPx: number;
  pictured: readonly Pictured[];
};

/** Pixels. */
const STEP = 6;

/** Each tire as a shape to clip by, and the hatching of what overlaps. */
export function PictureHatches({ id, perPx, pictured }: PictureHatchesProps) {
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
