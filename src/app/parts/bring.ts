/**
 * Scrolls to an element: what scrolls it within the page brings it to its top or middle, the page follows only as far as that
 * has to be seen. What stands over such a box is not pushed under the heading for it.
 */
export function bringTo(element: HTMLElement, where: "start" | "center"): void {
  const box = scrollBoxOf(element);
  if (box === null) {
    element.scrollIntoView({ block: where });
    return;
  }
  const { top, height } = element.getBoundingClientRect();
  const margin = Number.parseFloat(getComputedStyle(element).scrollMarginTop) || 0;
  const spare = where === "start" ? margin : Math.max(0, 0.5 * (box.clientHeight - height));
  box.scrollTop += top - box.getBoundingClientRect().top - box.clientTop - spare;
  box.scrollIntoView({ block: "nearest" });
}

/** What scrolls an element within the page; null = the page alone. */
function scrollBoxOf(element: HTMLElement): HTMLElement | null {
  for (let box = element.parentElement; box !== null && box !== document.body; box = box.parentElement)
    if (/auto|scroll/.test(getComputedStyle(box).overflowY) && box.scrollHeight > box.clientHeight)
      return box;
  return null;
}
