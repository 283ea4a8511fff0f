import { useMemo } from "react";
import { encode } from "uqr";

/**
 * Characters of the longest link that is drawn to be scanned: what version 32 holds in bytes at level L (ISO/IEC 18004, table of
 * capacities). It has 145 modules a side, a third of a millimeter each at 50 mm: less than that no camera reads off paper.
 */
export const MOST_SCANNED = 1952;

/** Modules of white about it that the standard asks for. */
const QUIET = 4;

export type QrCodeProps = {
  /** What it says; at most `MOST_SCANNED` characters. */
  text: string;
  /** What scanning it does, for who does not see it. */
  label: string;
};

/** A text to be scanned: black on white whatever the theme. Its sides are as many units as it has modules. */
export function QrCode({ text, label }: QrCodeProps) {
  const { size, path } = useMemo(() => modulesOf(text), [text]);
  return (
    <svg
      className="qr-code"
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
      style={{ "--modules": size } as React.CSSProperties}
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}

/** Its dark modules as one path, a run at a time, with the white about them. */
export function modulesOf(text: string): { readonly size: number; readonly path: string } {
  const { size, data } = encode(text, { ecc: "L", border: QUIET });
  let path = "";
  data.forEach((row, v) => {
    for (let u = 0; u < row.length; u++) {
      if (!row[u]) continue;
      const start = u;
      while (row[u + 1]) u++;
      path += `M${start} ${v}h${u + 1 - start}v1h${start - u - 1}z`;
    }
  });
  return { size, path };
}
