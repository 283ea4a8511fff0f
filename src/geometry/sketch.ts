/** A drawing as plain data, y down, to be shown on a page or written to a file. Units are the drawing's own. */
export interface Sketch {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly SketchShape[];
}

export type Place = readonly [x: number, y: number];

/**
 * What a line stands for: `part` the thing itself, `datum` what is measured from, `edge` a straightedge, `tape` what is
 * read, `thin` dimension lines, `off` where something must not be.
 */
export type SketchLook = "part" | "datum" | "edge" | "tape" | "thin" | "off";

export type SketchShape =
  | { readonly kind: "line"; readonly look: SketchLook; readonly points: readonly Place[] }
  | { readonly kind: "ring"; readonly look: SketchLook; readonly at: Place; readonly radius: number }
  | {
      readonly kind: "text";
      readonly text: string;
      readonly at: Place;
      readonly anchor: "start" | "middle" | "end";
      /** A number that is read, or a word beside it. */
      readonly isRead: boolean;
    };

const HEAD = 6;

/** A line with an arrow at either end. */
export function arrowLine(look: SketchLook, from: Place, to: Place): readonly SketchShape[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.sqrt(dx * dx + dy * dy);
  if (!(length > 0)) return [];
  const [ux, uy] = [dx / length, dy / length];
  const head = ([x, y]: Place, way: 1 | -1): SketchShape => {
    const [bx, by] = [x + way * ux * HEAD, y + way * uy * HEAD];
    const [nx, ny] = [-uy * (HEAD / 2.5), ux * (HEAD / 2.5)];
    return {
      kind: "line",
      look,
      points: [
        [bx + nx, by + ny],
        [x, y],
        [bx - nx, by - ny],
      ],
    };
  };
  return [{ kind: "line", look, points: [from, to] }, head(from, 1), head(to, -1)];
}

/** Words at a place. @param isRead a number that is read; default false */
export function words(
  text: string,
  at: Place,
  anchor: "start" | "middle" | "end" = "start",
  isRead = false,
): SketchShape {
  return { kind: "text", text, at, anchor, isRead };
}
