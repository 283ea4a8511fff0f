import type { CommanderError } from "commander";

/** A mistake in the command line itself, on one line with its mend. */
export function usageLine(error: CommanderError, verbs: readonly string[], args: readonly string[]): string {
  const verb = args[0] !== undefined && verbs.includes(args[0]) ? ` ${args[0]}` : "";
  const help = `see wellsweep${verb} --help`;
  const said = error.message
    .replace(/^error: /, "")
    .replace(/\s+/g, " ")
    .trim()
    .replace(/\.$/, "");
  switch (error.code) {
    case "commander.help":
      return `wellsweep: no verb given: say ${verbs.join(", ")}; ${help}`;
    case "commander.unknownCommand":
      return `wellsweep: ${said}: the verbs are ${verbs.join(", ")}; ${help}`;
    case "commander.excessArguments":
      return `wellsweep${verb}: ${said}: name one setup file, and quote lengths with spaces, like "-3 3/4"; ${help}`;
    case "commander.missingArgument":
      return `wellsweep${verb}: ${said}: name a setup file; ${help}`;
    default:
      return `wellsweep${verb}: ${said}; ${help}`;
  }
}
