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
  const held = useRef<E | null>(null);
  /** Pixels; kept while the element is gone for a moment. */
  const tall = useRef(0);
  const between = useRef(isBetween);
  useLayoutEffect(() => {
    between.current = isBetween;
    if (held.current) hold(held.current, isBetween, tall.current);
  }, [isBetween]);
  return useCallback((element: E) => {
    held.current = element;
    hold(element, between.current, tall.current);
    const observer = new ResizeObserver(() => {
      if (!between.current) tall.current = element.getBoundingClientRect().height;
    });
    observer.observe(element, { box: "border-box" });
    return () => {
      observer.disconnect();
      held.current = null;
    };
  }, []);
}

function hold(element: HTMLElement, isBetween: boolean, tall: number): void {
  element.style.minHeight = isBetween ? `${tall}px` : "";
}
