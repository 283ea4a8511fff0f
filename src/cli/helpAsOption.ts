import { CommanderError } from "commander";

/**
 * A command line with `help [VERB]` as `[VERB] --help`. What is no verb stays alone, to be refused: not even with --help
 * behind it does it mean the program. @throws CommanderError for more than one word after help
 */
export function helpAsOption(args: readonly string[], verbs: readonly string[]): readonly string[] {
  const [first, second, ...rest] = args;
  if (first === undefined || first.startsWith("-")) return args;
  if (first !== "help") return verbs.includes(first) ? args : [first];
  if (rest.length > 0) throw new CommanderError(2, "wellsweep.help", "help takes one verb");
  if (second === undefined || second === "help") return ["--help"];
  return verbs.includes(second) ? [second, "--help"] : [second];
}
