import { type RefCallback, useCallback, useLayoutEffect, useRef } from "react";

/**
 * Keeps an element at least as tall as it last was while what it shows is being found anew: what stands below neither
 * moves under the hand nor is drawn at another size twice. A picture in WebGL that changes its size can hold the page
 * for half a second on a busy machine, in which it hears no key.
 *
 * @param isBetween what the element shows is gone and the next is not there yet
 * @returns the element's ref
 */
export function useHeldHeight<E extends HTMLElement>(isBetween: boolean): RefCallback<E> {
  const held = useRef<{ readonly element: E; height: number } | null>(null);
  const between = useRef(isBetween);
  useLayoutEffect(() => {
    between.current = isBetween;
    if (held.current) held.current.element.style.minHeight = isBetween ? `${held.current.height}px` : "";
  }, [isBetween]);
  return useCallback((element: E) => {
    const mine = { element, height: 0 };
    held.current = mine;
    const observer = new ResizeObserver(() => {
      if (!between.current) mine.height = element.getBoundingClientRect().height;
    });
    observer.observe(element, { box: "border-box" });
    return () => {
      observer.disconnect();
      held.current = null;
    };
  }, []);
}
