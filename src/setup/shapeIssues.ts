import type * as z from "zod";
import { nearestWord } from "../units/words.ts";
import { KNOWN_KEYS_SEPARATOR } from "./fields/blockFields.ts";
import type { IssueList } from "./reading/issueList.ts";
import { MAX_ISSUES } from "./reading/limits.ts";
import { type KeyPath, valueAt } from "./types/keyPath.ts";

/** Adds what the schema found wrong with a document's shape, one issue a key. @param inside where what was read stands in it */
export function addShapeIssues(
  issues: IssueList,
  document: unknown,
  error: z.ZodError,
  inside: KeyPath = [],
): void {
  let unknown = 0;
  for (const issue of error.issues) {
    const path: KeyPath = [...inside, ...(issue.path as KeyPath)];
    if (issue.code !== "unrecognized_keys") {
      issues.add(path, valueAt(document, path), issue.message);
      continue;
    }
    const known = issue.message.split(KNOWN_KEYS_SEPARATOR);
    for (const key of issue.keys) {
      const at = [...path, key];
      issues.add(at, valueAt(document, at), unknownKeyMend(key, ++unknown > MAX_ISSUES ? [] : known));
    }
  }
}

function unknownKeyMend(key: string, known: readonly string[]): string {
  if (known.length === 0) return "unknown key";
  const near = nearestWord(key.slice(0, 60), known);
  return near ? `unknown key; did you mean "${near}"?` : `unknown key; known here: ${known.join(", ")}`;
}
