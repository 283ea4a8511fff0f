import { type RefObject, useLayoutEffect } from "react";

/** Letters are made smaller by steps of this, down to `SMALLEST`, of their usual size. */
const STEP = 0.04;
const SMALLEST = 0.6;

/**
 * Makes the letters of a page of fixed height so small that all of it fits, by its `--letters`. The page must be laid
 * out as it will be printed; where it may grow as it likes it keeps the usual size.
 */
export function useFit(page: RefObject<HTMLElement | null>): void {
  // After every rendering: whatever is written on the page may have grown.
  useLayoutEffect(() => {
    const { current } = page;
    if (!current) return;
    for (let size = 1; size >= SMALLEST; size -= STEP) {
      current.style.setProperty("--letters", size.toFixed(2));
      if (!isOverfull(current)) return;
    }
  });
}

/** Whether what is on a page reaches past its foot: into its margin too, which the scroll height would not tell. */
function isOverfull(page: HTMLElement): boolean {
  const { paddingBottom, borderBottomWidth } = getComputedStyle(page);
  const margin = Number.parseFloat(paddingBottom) + Number.parseFloat(borderBottomWidth);
  const foot = page.getBoundingClientRect().bottom - margin;
  // Half a pixel: where the last line ends is not told more exactly.
  return (page.lastElementChild?.getBoundingClientRect().bottom ?? 0) > foot + 0.5;
}
