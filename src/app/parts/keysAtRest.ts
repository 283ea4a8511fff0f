/**
 * ms without a key in a field. Longer than the rest after which what was typed is put into the document, so that what
 * follows from that is on the page first.
 */
const REST = 500;

/** What is typed into. A key elsewhere is a command, and its effect must not wait. */
const FIELDS = "input, textarea, select, [contenteditable]";

let lastKey = Number.NEGATIVE_INFINITY;
globalThis.window?.addEventListener(
  "keydown",
  ({ target }) => {
    if (target instanceof Element && target.matches(FIELDS)) noteKey();
  },
  { capture: true, passive: true },
);

/** Notes that a key came, as the page's own listener does. */
export function noteKey(): void {
  lastKey = performance.now();
}

/**
 * Runs something that can hold the page for long (half a second for a picture in WebGL that changes its size, on a busy
 * machine) when nobody types: a page that is held hears no key, and what it has not heard a crash loses. At once where
 * no key has come for a while.
 *
 * @param rest ms without a key
 * @returns what calls it off
 */
export function whenKeysRest(run: () => void, rest = REST): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const look = () => {
    const left = lastKey + rest - performance.now();
    if (left > 0) timer = setTimeout(look, left);
    else run();
  };
  look();
  return () => clearTimeout(timer);
}
