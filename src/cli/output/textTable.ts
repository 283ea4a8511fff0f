/** A column of a table: its header, and the side its cells are lined up on. */
export interface Column {
  readonly header: string;
  readonly align: "left" | "right";
}

/** A table in plain text, columns two spaces apart, a rule under the header. */
export function textTable(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const widths = columns.map(({ header }, i) =>
    Math.max(header.length, ...rows.map((row) => row[i]?.length ?? 0)),
  );
  const line = (cells: readonly string[]) =>
    columns
      .map(({ align }, i) =>
        align === "left" ? (cells[i] ?? "").padEnd(widths[i]!) : (cells[i] ?? "").padStart(widths[i]!),
      )
      .join("  ")
      .trimEnd();
  const rule = widths.map((width) => "-".repeat(width)).join("  ");
  return `${[line(columns.map((c) => c.header)), rule, ...rows.map(line)].join("\n")}\n`;
}
