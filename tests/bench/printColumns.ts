/** Prints a table, its first row the head, columns as wide as their widest cell. */
export function printColumns(table: readonly (readonly string[])[]): void {
  const widths = table[0]!.map((_, column) => Math.max(...table.map((row) => row[column]!.length)));
  for (const row of table) {
    console.log(
      row
        .map((cell, i) => cell.padEnd(widths[i]!))
        .join("  ")
        .trimEnd(),
    );
  }
}
