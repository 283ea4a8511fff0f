import { type SetupDocument, setupDocument } from "./document.ts";
import type { LoadedMeshes } from "./reading/blockReading.ts";
import { describeValue, shortened } from "./reading/describeValue.ts";
import { MAX_SHOWN } from "./reading/limits.ts";
import { parseJson } from "./reading/parseJson.ts";
import { resolveSetup } from "./resolveSetup.ts";
import type { Result, Setup, SetupIssue } from "./types/types.ts";

/** What a setup file holds: its JSON as typed, and the setup made of it. */
export interface ReadSetup {
  readonly document: SetupDocument;
  readonly setup: Setup;
}

/**
 * Reads the text of a setup file. `variant` null = the setup as it stands. Never throws: every mistake in the
 * file is an issue, faults of the JSON itself with line and column.
 * @param file the file as the user named it, for the issues
 * @param meshes mesh files already read, by the text of their `file` key
 */
export function readSetup(
  text: string,
  file: string,
  variant: string | null = null,
  meshes: LoadedMeshes = new Map(),
): Result<ReadSetup> {
  const json = readDocument(text, file);
  if (!json.ok) return json;
  const document = json.value;
  const setup = resolveSetup(document, file, variant, meshes);
  return setup.ok ? { ok: true, value: { document: document as SetupDocument, setup: setup.value } } : setup;
}

/** The JSON of a setup file as typed, whatever is missing or wrong in it; refuses what is no JSON, and other files. */
export function readDocument(text: string, file: string): Result<unknown> {
  const json = parseJson(text, file, "a setup");
  if (!json.ok) return json;
  const foreign = foreignIssue(json.value, file);
  return foreign === null ? json : { ok: false, issues: [foreign] };
}

/** That a document does not say it is a setup: told alone, since what is in another program's file is not ours to tell. */
function foreignIssue(document: unknown, file: string): SetupIssue | null {
  const shown = (value: unknown) => shortened(describeValue(value), MAX_SHOWN);
  if (typeof document !== "object" || document === null || Array.isArray(document))
    return { file, key: "", value: shown(document), mend: "must be an object, { … }" };
  const { format } = document as { readonly format?: unknown };
  const { error } = setupDocument.shape.format.safeParse(format);
  return error ? { file, key: "format", value: shown(format), mend: error.issues[0]!.message } : null;
}
