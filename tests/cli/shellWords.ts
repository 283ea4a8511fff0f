/**
 * Splits one simple command into words as a shell does: quotes and backslashes, and a comment after " #" left
 * off. @throws Error for what only a shell can do (pipes, redirections, variables)
 */
export function shellWords(command: string): string[] {
  const words: string[] = [];
  let rest = command.trim();
  while (rest !== "" && !rest.startsWith("#")) {
    const [piece] = /^(?:"(?:[^"\\]|\\.)*"|'[^']*'|\\.|[^\s"'\\])+/.exec(rest) ?? [];
    if (piece === undefined) throw new Error(`shellWords: cannot split ${command}`);
    const isQuoted = /["'\\]/.test(piece);
    if (!isQuoted && /[|<>&;$`*]/.test(piece)) throw new Error(`shellWords: only a shell can run ${command}`);
    words.push(
      piece.replace(/"((?:[^"\\]|\\.)*)"|'([^']*)'|\\(.)/g, (_, double, single, escaped) =>
        double !== undefined ? double.replace(/\\(["\\$`])/g, "$1") : (single ?? escaped),
      ),
    );
    rest = rest.slice(piece.length).trimStart();
  }
  return words;
}
