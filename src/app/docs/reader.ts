import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";

/** A place in the documents: a page's name, and a heading of it as its link has it. */
export interface DocPlace {
  readonly page: string;
  readonly anchor: string | null;
}

/** The page that lists the others. */
export const FIRST_PAGE = "first";

const reader = createStore<{ readonly at: DocPlace | null }>()(() => ({ at: null }));

/** Opens the documents at a place; null closes them. */
export function openDocs(at: DocPlace | null): void {
  reader.setState({ at });
}

/** Where the documents are open; null = nowhere. */
export function useDocPlace(): DocPlace | null {
  return useStore(reader, ({ at }) => at);
}

/** A heading as links name it: `## Bump steer and its cure` is `bump-steer-and-its-cure`. */
export function anchorOf(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s-]/gu, "")
    .trim()
    .replace(/\s/g, "-");
}

/** Where a link of a page leads: a place in the documents, or an address elsewhere. */
export function placeOfLink(href: string, from: string): DocPlace | null {
  const found = /^(?:([\w-]+)\.md)?(?:#(.+))?$/.exec(href);
  if (!found || href === "") return null;
  return { page: found[1] ?? from, anchor: found[2] ?? null };
}
