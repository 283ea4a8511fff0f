import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import type { Pixel } from "../../../studies/measure/photoPlane.ts";
import { knownName, PHOTO_WORDS } from "../../../studies/wording/photoWords.ts";
import { WaySwitch } from "../fields/WaySwitch.tsx";
import type { Photo } from "./keepPhoto.ts";

const WAYS = [
  { way: "known", label: "known points" },
  { way: "trace", label: "the lip" },
] as const;
const SIZES = [
  { way: "1", label: "whole" },
  { way: "2", label: "× 2" },
  { way: "4", label: "× 4" },
] as const;

/** CSS pixels within which a press takes a point. */
const REACH = 18;

export type PhotoBoardProps = {
  photo: Photo;
  onChange: (photo: Photo) => void;
};

/** The photo: a tap puts the next known point or lengthens the traced lip, a drag moves one, arrow keys do so finely. */
export function PhotoBoard({ photo, onChange }: PhotoBoardProps) {
  const { width, height, known, traced } = photo;
  const [way, setWay] = useState<"known" | "trace">("known");
  const [size, setSize] = useState<"1" | "2" | "4">("1");
  const [address, setAddress] = useState("");
  const held = useRef<number | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(photo.picture);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [photo.picture]);

  const points: readonly (Pixel | null)[] = way === "known" ? known.map(({ pixel }) => pixel) : traced;
  const put = (at: number, pixel: Pixel) =>
    onChange(
      way === "known"
        ? { ...photo, known: known.map((one, i) => (i === at ? { ...one, pixel } : one)) }
        : { ...photo, traced: at < traced.length ? traced.with(at, pixel) : [...traced, pixel] },
    );
  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button !== 0) return;
    const [x, y] = pixelAt(event);
    const reach = REACH / (event.currentTarget.getScreenCTM()?.a ?? 1);
    const near = points.findIndex((one) => one !== null && Math.hypot(one[0] - x, one[1] - y) < reach);
    const next = way === "known" ? points.indexOf(null) : points.length;
    if (near < 0 && next < 0) return;
    held.current = near >= 0 ? near : next;
    event.currentTarget.setPointerCapture(event.pointerId);
    if (near < 0) put(next, [x, y]);
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    if (held.current !== null) put(held.current, inside(pixelAt(event), width, height));
  };
  const stop = () => {
    held.current = null;
  };
  const onKey = (event: KeyboardEvent, at: number) => {
    const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    const from = points[at];
    if (!step || !from) return;
    event.preventDefault();
    const by = event.shiftKey ? 10 : 1;
    put(at, inside([from[0] + by * step[0]!, from[1] + by * step[1]!], width, height));
  };
  const takeBack = () =>
    onChange(
      way === "trace"
        ? { ...photo, traced: traced.slice(0, -1) }
        : { ...photo, known: known.with(lastPlaced(known), { ...known[lastPlaced(known)]!, pixel: null }) },
    );
  const radius = width / (70 * Number(size));
  return (
    <>
      <div className="row-tools">
        <WaySwitch label="Tap" ways={WAYS} way={way} onChange={setWay} />
        <WaySwitch label="Size" ways={SIZES} way={size} onChange={setSize} />
      </div>
      <p className="reading-how">{way === "known" ? PHOTO_WORDS.known : PHOTO_WORDS.trace}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached with keys */}
      <section className="photo-board" tabIndex={0} aria-label="Photo">
        {/* biome-ignore lint/a11y/useSemanticElements: a picture that holds what can be moved */}
        <svg
          viewBox={`0 0 ${width} ${height}`}
          style={{ width: `${Number(size) * 100}%` }}
          role="group"
          aria-label={`Photo ${photo.name}`}
          data-held={way}
          onPointerDown={onPointerDown}
          onPointerMove={onPointerMove}
          onPointerUp={stop}
          onPointerCancel={stop}
        >
          {address !== "" && <image href={address} width={width} height={height} />}
          <polyline className="photo-line-under" points={traced.map((one) => one.join()).join(" ")} />
          <polyline className="photo-line" points={traced.map((one) => one.join()).join(" ")} />
          {traced.map(
            (pixel, i) =>
              way === "trace" && (
                <Handle
                  // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the list
                  key={i}
                  pixel={pixel}
                  radius={radius}
                  label={`Point ${i + 1} of the lip`}
                  word=""
                  onKey={(event) => onKey(event, i)}
                />
              ),
          )}
          {known.map(
            ({ pixel }, i) =>
              pixel && (
                <Handle
                  // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the list
                  key={i}
                  pixel={pixel}
                  radius={radius * 1.3}
                  label={`Known point ${i + 1}, ${knownName(i)}`}
                  word={String(i + 1)}
                  onKey={(event) => way === "known" && onKey(event, i)}
                />
              ),
          )}
        </svg>
      </section>
      <button
        type="button"
        className="small-button"
        disabled={way === "trace" ? traced.length === 0 : lastPlaced(known) < 0}
        onClick={takeBack}
      >
        Take the last tap back
      </button>
    </>
  );
}

type HandleProps = {
  pixel: Pixel;
  radius: number;
  label: string;
  word: string;
  onKey: (event: KeyboardEvent) => void;
};

function Handle({ pixel: [x, y], radius, label, word, onKey }: HandleProps) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: there is no button element inside a drawing
    <g className="photo-point" role="button" tabIndex={0} aria-label={label} onKeyDown={onKey}>
      <circle cx={x} cy={y} r={radius} strokeWidth={radius / 2.5} />
      <circle className="photo-dot" cx={x} cy={y} r={radius / 5} />
      {word !== "" && (
        <text x={x + 1.4 * radius} y={y} fontSize={2.4 * radius} strokeWidth={radius / 2}>
          {word}
        </text>
      )}
    </g>
  );
}

function pixelAt({ currentTarget, clientX, clientY }: PointerEvent<SVGSVGElement>): Pixel {
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(currentTarget.getScreenCTM()?.inverse());
  return [x, y];
}

function inside([x, y]: Pixel, width: number, height: number): Pixel {
  return [Math.min(Math.max(x, 0), width), Math.min(Math.max(y, 0), height)];
}

function lastPlaced(known: Photo["known"]): number {
  return known.findLastIndex(({ pixel }) => pixel !== null);
}
