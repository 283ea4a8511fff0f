import type { Command } from "commander";

/** Options every verb takes. */
export interface SharedOptions {
  readonly json?: true;
  readonly variant?: string;
  readonly allowOutside?: boolean;
  /** As typed; seconds. */
  readonly budget: string;
}

/** What verbs take besides that can ask about the truck as aligned. */
export interface AlignedOptions extends SharedOptions {
  readonly aligned?: true;
}

/** What verbs take besides that go by catalogs. */
export interface CatalogOptions {
  readonly catalog?: readonly string[];
}

/** Adds FILE and what every verb takes to a verb. */
export function withShared(verb: Command): Command {
  return verb
    .argument("FILE", "setup file, or - for standard input")
    .option("--variant <NAME>", "use one of the file's variants")
    .option("--allow-outside", "read mesh files outside the setup's folder too; default only inside it")
    .option(
      "--budget <SECONDS>",
      "processor time allowed; after it the answer is what was reached by then",
      "10",
    )
    .option("--json", "print one JSON document: lengths in the file's units, angles in degrees");
}

/** The same and `--aligned`. */
export function withAligned(verb: Command): Command {
  return withShared(verb).option(
    "--aligned",
    "align the truck to the setup's alignment.targets first, as `align` does; default as bolted on",
  );
}

/** Adds `--catalog`, which may be given any number of times. @param what the catalogs that the verb goes by, in words */
export function withCatalogs(verb: Command, what: string): Command {
  return verb.option(
    "--catalog <FILE>",
    `catalog of ${what} to use in place of the program's own of its kind; any number of times`,
    (value: string, before: readonly string[] | undefined) => [...(before ?? []), value],
  );
}
