import { type RefObject, useEffect, useState } from "react";

/** Less of it than this at the edge of the screen is its margin: nothing to read. */
const SLIVER = "-40px 0px";

/** Whether an element is on the screen, all or a bit of it: what nobody sees need not follow a drag. */
export function useIsSeen(element: RefObject<Element | null>): boolean {
  const [isSeen, setSeen] = useState(false);
  useEffect(() => {
    const { current } = element;
    if (current === null) return;
    const observer = new IntersectionObserver((entries) => setSeen(entries.at(-1)?.isIntersecting ?? false), {
      rootMargin: SLIVER,
    });
    observer.observe(current);
    return () => observer.disconnect();
  }, [element]);
  return isSeen;
}
