import { type RefCallback, type RefObject, useCallback, useLayoutEffect, useRef, useState } from "react";

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

/**
 * Keeps an element at least as tall as it last was while what it shows is being found anew: what stands below neither
 * moves under the hand nor is drawn at another size twice. A picture in WebGL that changes its size can hold the page
 * for half a second on a busy machine, in which it hears no key.
 *
 * @param isBetween what the element shows is gone and the next is not there yet
 * @param isDragged something is dragged: it stays exactly as tall, and cuts off what is more
 * @returns the element's ref
 */
export function useHeldHeight<E extends HTMLElement>(isBetween: boolean, isDragged = false): RefCallback<E> {
  const held = useRef<E | null>(null);
  /** Pixels; kept while the element is gone for a moment. */
  const tall = useRef(0);
  const between = useRef(isBetween || isDragged);
  useLayoutEffect(() => {
    between.current = isBetween || isDragged;
    if (!held.current) return;
    hold(held.current, between.current, tall.current);
    // As tall as what stood in its place it would not be told of.
    if (!between.current) tall.current = held.current.getBoundingClientRect().height;
    held.current.style.maxHeight = isDragged ? `${tall.current}px` : "";
    held.current.style.overflow = isDragged ? "clip" : "";
  }, [isBetween, isDragged]);
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
