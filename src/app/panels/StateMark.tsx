import type { GapWord } from "../../studies/wording/gapWord.ts";

export type StateMarkProps = {
  /** What it stands for; the word itself must be readable beside it. */
  word: GapWord;
  /** Side of its square in em. Default 1. */
  size?: number;
};

const SHAPES: Readonly<Record<GapWord, string>> = {
  rubs: "M3 3 L13 13 M13 3 L3 13",
  close: "M8 2.5 L14 13.5 L2 13.5 Z",
  clear: "M8 2.5 a5.5 5.5 0 1 0 0.01 0 Z",
};

/** A shape for a state, so that color is never alone: a cross rubs, a triangle is close, a circle is clear. */
export function StateMark({ word, size = 1 }: StateMarkProps) {
  return (
    <svg
      className={`mark mark-${word}`}
      viewBox="0 0 16 16"
      width={`${size}em`}
      height={`${size}em`}
      aria-hidden="true"
    >
      <path d={SHAPES[word]} />
    </svg>
  );
}
