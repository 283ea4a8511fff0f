import { useLayoutEffect } from "react";

/** What the page's root is marked by. */
export type PageMark = "dock" | "docs" | "layer" | "picking" | "showing" | "steps";

/**
 * Marks the page's root, such as `:root[data-dock="open"]`, for the styles of what stands elsewhere on the page. A `:has()` up there
 * would have all of the page styled anew whenever a line comes or goes anywhere. @param value null = no mark
 */
export function usePageMark(mark: PageMark, value: string | null): void {
  useLayoutEffect(() => {
    if (value === null) return;
    const { dataset } = document.documentElement;
    dataset[mark] = value;
    return () => {
      delete dataset[mark];
    };
  }, [mark, value]);
}
