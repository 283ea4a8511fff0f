import { type RefObject, useLayoutEffect, useState } from "react";

/** An element's size as it is laid out, px. */
export interface LaidSize {
  readonly width: number;
  readonly height: number;
}

/** Size of an element as it is laid out; `start` until it has been. */
export function useSize(ref: RefObject<HTMLElement | null>, start: LaidSize): LaidSize {
  const [size, setSize] = useState(start);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () =>
      setSize((before) => {
        const { clientWidth: width, clientHeight: height } = element;
        // 0 while a window around it is not shown yet.
        if (width === 0 || height === 0) return before;
        return width === before.width && height === before.height ? before : { width, height };
      });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return size;
}
