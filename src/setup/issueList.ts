import { describeValue } from "./describeValue.ts";
import { isWithin, type KeyPath, keyText } from "./keyPath.ts";
import { MAX_ISSUES } from "./limits.ts";
import type { SetupIssue } from "./types.ts";

/** Collects a file's issues, so that all of them can be told at once. */
export class IssueList {
  readonly #found: { readonly path: KeyPath; readonly issue: SetupIssue }[] = [];
  readonly #file: string;

  constructor(file: string) {
    this.#file = file;
  }

  get isEmpty(): boolean {
    return this.#found.length === 0;
  }

  /** Adds an issue; `value` is what stands at the key, `mend` one sentence without a full stop. */
  add(path: KeyPath, value: unknown, mend: string): void {
    this.#found.push({
      path,
      issue: { file: this.#file, key: keyText(path), value: describeValue(value), mend },
    });
  }

  /** Whether something is wrong at the path itself, above it or inside it. */
  touches(path: KeyPath): boolean {
    return this.#found.some((entry) => isWithin(entry.path, path) || isWithin(path, entry.path));
  }

  /** Every issue in the order found. */
  all(): readonly SetupIssue[] {
    return this.#found.map((entry) => entry.issue);
  }
}

/** The issues to report: the first 50, and one that counts the rest. */
export function capIssues(issues: readonly SetupIssue[]): readonly SetupIssue[] {
  const extra = issues.length - MAX_ISSUES;
  if (extra <= 0) return issues;
  const file = issues[0]!.file;
  const rest = { file, key: "", value: "", mend: `and ${extra} more; mend these first` };
  return [...issues.slice(0, MAX_ISSUES), rest];
}
