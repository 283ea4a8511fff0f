/**
 * Takes what a page could not write in time when it was closed: written at once, read at the next start. A page that goes
 * may be stopped before IndexedDB has written.
 */
export interface LastWords {
  say(value: unknown): void;
  /** What was said last; undefined = nothing, or nothing that can be read. */
  hear(): unknown;
  clear(): void;
}

/** Characters. Browsers give a page about 5 million; more than this is a mesh typed out, which IndexedDB has by then. */
const MAX_CHARACTERS = 2_000_000;

/** In the browser's local storage. Where there is none, nothing is kept and nothing is thrown. */
export function localLastWords(key = "wellsweep-last-words"): LastWords {
  const attempt = <T>(what: () => T): T | undefined => {
    try {
      return what();
    } catch {
      return undefined; // private mode, storage full or switched off, or no JSON
    }
  };
  return {
    say: (value) => {
      attempt(() => {
        const text = JSON.stringify(value);
        if (text.length <= MAX_CHARACTERS) localStorage.setItem(key, text);
      });
    },
    hear: () =>
      attempt(() => {
        const text = localStorage.getItem(key);
        return text === null ? undefined : (JSON.parse(text) as unknown);
      }),
    clear: () => {
      attempt(() => localStorage.removeItem(key));
    },
  };
}
