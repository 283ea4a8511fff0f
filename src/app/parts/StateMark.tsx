import type { AnswerState } from "../../studies/doubts/doubt.ts";

export type StateMarkProps = {
  /** What it stands for; the word itself must be readable beside it. */
  word: AnswerState;
  /** Side of its square in em. Default 1. */
  size?: number;
};

const SHAPES: Readonly<Record<AnswerState, string>> = {
  rubs: "M3 3 L13 13 M13 3 L3 13",
  close: "M8 2.5 L14 13.5 L2 13.5 Z",
  clear: "M8 2.5 a5.5 5.5 0 1 0 0.01 0 Z",
  unfinished: "M3.5 2.5 H12.5 L3.5 13.5 H12.5 Z",
  unusual: "M8 1.5 L14.5 8 L8 14.5 L1.5 8 Z M8 5 V9 M8 10.4 V11.6",
  fromExample: "M2.5 3.5 H13.5 V12.5 H2.5 Z",
  assumed: "M2.5 3.5 H13.5 V12.5 H2.5 Z M5.5 8 H10.5",
};

/**
 * A shape for a state, so that color is never alone: a cross rubs, a triangle is close, a circle is clear; an hourglass
 * is not finished, a diamond with a call mark is unusual, a dotted box is from the example, with a line in it partly assumed.
 */
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
