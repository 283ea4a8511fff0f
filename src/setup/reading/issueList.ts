import { visibleText } from "../../units/words.ts";
import { type KeyPath, keyText } from "../types/keyPath.ts";
import type { SetupIssue } from "../types/types.ts";
import { describeValue } from "./describeValue.ts";
import { MAX_ISSUES, MAX_KEPT_ISSUES, MAX_PLACES } from "./limits.ts";

/** Collects a file's issues, so that all of them can be told at once. */
export class IssueList {
  readonly #found: SetupIssue[] = [];
  readonly #places = new PathSet();
  readonly #file: string;
  #more = 0;

  constructor(file: string) {
    this.#file = file;
  }

  get isEmpty(): boolean {
    return this.#found.length === 0;
  }

  /** How many there are besides those that `all` gives. */
  get more(): number {
    return this.#more;
  }

  /** An empty list of the same file. */
  another(): IssueList {
    return new IssueList(this.#file);
  }

  /** Adds an issue; `value` is what stands at the key, `mend` one sentence without a full stop. */
  add(path: KeyPath, value: unknown, mend: string): void {
    this.#places.add(path);
    if (this.#found.length === MAX_KEPT_ISSUES) this.#more++;
    else this.#found.push({ file: this.#file, key: keyText(path), value: describeValue(value), mend });
  }

  /** Whether something is wrong at the path itself, above it or inside it. */
  touches(path: KeyPath): boolean {
    return this.#places.touches(path);
  }

  /** Issues in the order found, `MAX_KEPT_ISSUES` at most. */
  all(): readonly SetupIssue[] {
    return this.#found;
  }
}

/** The issues to report: the first 50, and one that counts the rest. @param more how many there are besides */
export function capIssues(issues: readonly SetupIssue[], more = 0): readonly SetupIssue[] {
  const extra = issues.length + more - MAX_ISSUES;
  if (extra <= 0) return issues;
  const file = issues[0]!.file;
  const rest = { file, key: "", value: "", mend: `and ${extra} more; fix these first` };
  return [...issues.slice(0, MAX_ISSUES), rest];
}

interface Place {
  /** All of it is in the set. */
  whole: boolean;
  readonly inner: Map<string | number, Place>;
}

/** Places of a document, asked for by path in as many steps as the path has, however many they are. */
class PathSet {
  readonly #top: Place = { whole: false, inner: new Map() };

  /** Adds a place and all inside it. Where an object or list has more than `MAX_PLACES` of them, it is added as a whole. */
  add(path: KeyPath): void {
    let place = this.#top;
    for (const step of path) {
      if (place.whole) return;
      let next = place.inner.get(step);
      if (next === undefined) {
        if (place.inner.size === MAX_PLACES) break;
        next = { whole: false, inner: new Map() };
        place.inner.set(step, next);
      }
      place = next;
    }
    place.whole = true;
    place.inner.clear();
  }

  /** Whether a place of the set is at the path, above it or inside it. */
  touches(path: KeyPath): boolean {
    let place = this.#top;
    for (const step of path) {
      if (place.whole) return true;
      const next = place.inner.get(step);
      if (next === undefined) return false;
      place = next;
    }
    return place.whole || place.inner.size > 0;
  }
}

/** An issue on one line: `FILE: KEY: VALUE: mend`; the key or value is left out where there is none. */
export function formatIssue(issue: SetupIssue): string {
  return [issue.file, issue.key, issue.value, issue.mend]
    .filter((part) => part !== "")
    .map(visibleText)
    .join(": ");
}
