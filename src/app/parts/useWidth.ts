import { type RefObject, useLayoutEffect, useState } from "react";

/** Width of an element as it is laid out, px; `start` until it has been. */
export function useWidth(ref: RefObject<HTMLElement | null>, start: number): number {
  const [width, setWidth] = useState(start);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    // 0 while a window around it is not shown yet.
    const measure = () => setWidth((before) => element.clientWidth || before);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return width;
}
