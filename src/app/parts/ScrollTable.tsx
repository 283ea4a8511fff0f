import type { ReactNode } from "react";

export type ScrollTableProps = {
  /** What the table is of. */
  label: string;
  children: ReactNode;
};

/** A head cell for each column of a table. */
export function ColumnHeads({ of }: { of: readonly string[] }) {
  return of.map((column) => (
    <th key={column} scope="col">
      {column}
    </th>
  ));
}

/** A table that may be wider than the page: it scrolls by itself, with the keys too. */
export function ScrollTable({ label, children }: ScrollTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: who has no mouse scrolls it with the arrow keys
    <section className="variants-scroll" tabIndex={0} aria-label={label}>
      <table>{children}</table>
    </section>
  );
}
