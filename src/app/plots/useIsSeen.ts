import { type RefObject, useEffect, useState } from "react";

/** Whether an element is on the screen or just off it: what nobody sees need not follow a drag. */
export function useIsSeen(element: RefObject<Element | null>): boolean {
  const [isSeen, setSeen] = useState(false);
  useEffect(() => {
    const { current } = element;
    if (current === null) return;
    const observer = new IntersectionObserver((entries) => setSeen(entries.some((e) => e.isIntersecting)), {
      rootMargin: "200px",
    });
    observer.observe(current);
    return () => observer.disconnect();
  }, [element]);
  return isSeen;
}
