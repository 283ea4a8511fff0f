const texts = new WeakMap<object, string>();

/**
 * The JSON of a value of plain objects and lists that nobody changes in place. What was written before is not written
 * again: of a document of which one field changed, only the way to that field costs anything.
 */
export function cachedJson(value: unknown): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const known = texts.get(value);
  if (known !== undefined) return known;
  const text = Array.isArray(value)
    ? `[${value.map(cachedJson).join(",")}]`
    : `{${Object.entries(value)
        .filter(([, entry]) => entry !== undefined)
        .map(([key, entry]) => `${JSON.stringify(key)}:${cachedJson(entry)}`)
        .join(",")}}`;
  texts.set(value, text);
  return text;
}

/**
 * Takes what was just done, at once: written before the key's own handler ends, read at the next start, and cleared as
 * soon as the box has it. A page may be ended at any moment, and a box writes when it gets to it.
 */
export interface LastWords {
  say(documentId: string, value: object): void;
  /** What was said last of each document, newest first, without what cannot be read. */
  hear(): readonly unknown[];
  clear(documentId: string): void;
}

/** Characters. Browsers give a page about 5 million; more than this is a mesh typed out, which waits for the box. */
const MAX_CHARACTERS = 1_000_000;

/**
 * In the browser's local storage: the browser's own process has it when `say` returns, so that the page's process may end
 * then. That process itself writes it to the disk some seconds later; the box is sooner. Where there is no local storage
 * nothing is kept and nothing is thrown.
 */
export function localLastWords(now: () => number = Date.now, prefix = "wellsweep-said:"): LastWords {
  const attempt = <T>(what: () => T, otherwise: T): T => {
    try {
      return what();
    } catch {
      return otherwise; // private mode, storage full or switched off, or no JSON
    }
  };
  return {
    say: (documentId, value) =>
      attempt(() => {
        const text = cachedJson(value);
        if (text.length <= MAX_CHARACTERS) localStorage.setItem(prefix + documentId, `${now()} ${text}`);
      }, undefined),
    hear: () =>
      attempt(() => Object.keys(localStorage), [])
        .filter((key) => key.startsWith(prefix))
        .flatMap((key) =>
          attempt(() => {
            const [, at, text] = /^(\d+) ([\s\S]*)$/.exec(localStorage.getItem(key) ?? "") ?? [];
            return text === undefined ? [] : [{ at: Number(at), value: JSON.parse(text) as unknown }];
          }, []),
        )
        .sort((a, b) => b.at - a.at)
        .map(({ value }) => value),
    clear: (documentId) => attempt(() => localStorage.removeItem(prefix + documentId), undefined),
  };
}
