import { correction, generate } from "lean-qr";
import { useMemo } from "react";

/** Modules of white about it that the standard asks for. */
const QUIET = 4;

/**
 * Modules a side, with the white about it, of the largest that is drawn: version 23 (ISO/IEC 18004). In the 60 mm a sheet has for
 * it each is half a millimeter: less than that no camera reads off paper.
 */
export const MOST_MODULES = 17 + 4 * 23 + 2 * QUIET;

export type QrCodeProps = {
  code: Modules;
  /** What scanning it does, for who does not see it. */
  label: string;
};

/** What is drawn of a code. */
export interface Modules {
  /** Modules a side, with the white about it. */
  readonly size: number;
  /** Its dark modules, a run at a time. */
  readonly path: string;
}

/** A text to be scanned: black on white whatever the theme. Its sides are as many units as it has modules. */
export function QrCode({ code: { size, path }, label }: QrCodeProps) {
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

/** The code of a text; null = there is none, or it would have more modules than are drawn. */
export function useCode(text: string | null): Modules | null {
  return useMemo(() => (text === null ? null : modulesOf(text)), [text]);
}

/**
 * The smallest code of a text: each stretch of it in the mode that takes the fewest bits, and as much correction as its size has
 * room for. null = it has more than `MOST_MODULES`.
 */
export function modulesOf(text: string): Modules | null {
  let code: ReturnType<typeof generate>;
  try {
    const maxVersion = (MOST_MODULES - 2 * QUIET - 17) / 4;
    code = generate(text, { minCorrectionLevel: correction.L, maxVersion });
  } catch {
    // The library throws where no version that is allowed holds the text.
    return null;
  }
  let path = "";
  for (let v = 0; v < code.size; v++) {
    for (let u = 0; u < code.size; u++) {
      if (!code.get(u, v)) continue;
      const start = u;
      while (code.get(u + 1, v)) u++;
      path += `M${start + QUIET} ${v + QUIET}h${u + 1 - start}v1h${start - u - 1}z`;
    }
  }
  return { size: code.size + 2 * QUIET, path };
}
