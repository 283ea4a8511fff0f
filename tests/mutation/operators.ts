import ts from "typescript";

/** One change of a source that its tests should notice. */
export interface Mutant {
  /** Path from the repository's root. */
  readonly file: string;
  readonly line: number;
  /** The source's line, without the space around it. */
  readonly text: string;
  /** The expression changed, by where it stands in the source. */
  readonly start: number;
  readonly end: number;
  readonly from: string;
  readonly to: string;
}

const SWAPS: Readonly<Partial<Record<ts.SyntaxKind, string>>> = {
  [ts.SyntaxKind.PlusToken]: "-",
  [ts.SyntaxKind.MinusToken]: "+",
  [ts.SyntaxKind.AsteriskToken]: "/",
  [ts.SyntaxKind.SlashToken]: "*",
  // The other way round, not one step on: of two real numbers that are equal by chance nothing hangs on the side.
  [ts.SyntaxKind.LessThanToken]: ">=",
  [ts.SyntaxKind.LessThanEqualsToken]: ">",
  [ts.SyntaxKind.GreaterThanToken]: "<=",
  [ts.SyntaxKind.GreaterThanEqualsToken]: "<",
  [ts.SyntaxKind.EqualsEqualsEqualsToken]: "!==",
  [ts.SyntaxKind.ExclamationEqualsEqualsToken]: "===",
  [ts.SyntaxKind.AmpersandAmpersandToken]: "||",
  [ts.SyntaxKind.BarBarToken]: "&&",
};

const NAMES: Readonly<Record<string, string>> = {
  "Math.min": "Math.max",
  "Math.max": "Math.min",
  "Math.sin": "Math.cos",
  "Math.cos": "Math.sin",
  "Math.floor": "Math.ceil",
  "Math.ceil": "Math.floor",
  "Math.abs": "-Math.abs",
};

/** Smaller numbers are tolerances and steps, of which another would do as well. */
const LEAST_NUMBER = 1e-2;

/** Every mutant of a source: operators turned round, numbers one on, signs lost, functions swapped, calls left out. */
export function mutantsOf(file: string, text: string): Mutant[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const lines = text.split("\n");
  const found: Mutant[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isInterfaceDeclaration(node)) return;
    if (ts.isEnumDeclaration(node) || isThrown(node)) return;
    const to = changed(node, source);
    if (to !== null) {
      const start = node.getStart(source);
      const line = source.getLineAndCharacterOfPosition(start).line + 1;
      const own = lines[line - 1]!.trim();
      found.push({ file, line, text: own, start, end: node.end, from: node.getText(source), to });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** What an error says is for a person to read. */
function isThrown(node: ts.Node): boolean {
  return ts.isThrowStatement(node);
}

function changed(node: ts.Node, source: ts.SourceFile): string | null {
  if (ts.isBinaryExpression(node)) return changedBinary(node, source);
  if (ts.isNumericLiteral(node)) return changedNumber(node);
  if (ts.isPrefixUnaryExpression(node)) {
    const { operator, operand } = node;
    if (operator === ts.SyntaxKind.ExclamationToken) return `!!(${operand.getText(source)})`;
    const isSign = operator === ts.SyntaxKind.MinusToken && !ts.isNumericLiteral(operand);
    return isSign ? `(${operand.getText(source)})` : null;
  }
  if (ts.isCallExpression(node)) {
    const called = node.expression.getText(source);
    const other = NAMES[called];
    if (other !== undefined) return `${other}${node.getText(source).slice(called.length)}`;
    return ts.isExpressionStatement(node.parent) ? "undefined" : null;
  }
  return null;
}

function changedBinary(node: ts.BinaryExpression, source: ts.SourceFile): string | null {
  const to = SWAPS[node.operatorToken.kind];
  const [left, right] = [node.left.getText(source), node.right.getText(source)];
  if (to === undefined) return null;
  if (/["'`]/.test(left + right) && node.operatorToken.kind === ts.SyntaxKind.PlusToken) return null;
  return `((${left}) ${to} (${right}))`;
}

function changedNumber(node: ts.NumericLiteral): string | null {
  const value = Number(node.text);
  const isType = ts.isLiteralTypeNode(node.parent);
  if (isType || ts.isPropertyAssignment(node.parent) || (value !== 0 && value < LEAST_NUMBER)) return null;
  return String(value + 1);
}
