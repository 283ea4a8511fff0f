import { type KeyPath, keyText } from "../types/keyPath.ts";
import type { SetupIssue } from "../types/types.ts";
import { describeValue } from "./describeValue.ts";
import { MAX_ISSUES, MAX_KEPT_ISSUES } from "./limits.ts";
import { PathSet } from "./pathSet.ts";

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
  const rest = { file, key: "", value: "", mend: `and ${extra} more; mend these first` };
  return [...issues.slice(0, MAX_ISSUES), rest];
}
