import { createStore } from "zustand/vanilla";

/** Something to tell once, until it is put away; a link to copy may come with it. */
export interface Notice {
  readonly text: string;
  readonly link: string | null;
}

export const notice = createStore<{ readonly shown: Notice | null }>()(() => ({ shown: null }));

export function tell(text: string, link: string | null = null): void {
  notice.setState({ shown: { text, link } });
}

/** Tells that something did not come over the network, and how to mend that. @param what with an upper-case letter */
export function notFetched(what: string): string {
  return `${what} could not be loaded; try again when you are online.`;
}

export function putAway(): void {
  notice.setState({ shown: null });
}
