import type { OrderSheet } from "../../studies/order/orderSheet.ts";
import { ORDER_CAUTIONS } from "../../studies/wording/cautions.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { orderGroups, orderRemarks, orderWrittenSentence } from "../../studies/wording/orderRows.ts";
import { type Column, heading, textTable } from "./textTable.ts";

/** An order sheet as a person reads it: a table a group, what the blocks say otherwise, what is open. @param written file the setup was written to; null = none */
export function orderTable(sheet: OrderSheet, written: string | null): string {
  const format = formatOf(sheet.setup);
  const groups = orderGroups(sheet, format);
  // One width for all groups, so that the sheet reads as one.
  const widths = (["label", "value"] as const).map((key) =>
    Math.max(...groups.flatMap(({ title, rows }) => [title.length, ...rows.map((row) => row[key].length)])),
  );
  const tables = groups.map(({ title, rows, notGiven }) => {
    const columns: Column[] = [
      { header: title.padEnd(widths[0]!), align: "left" },
      { header: "Ordered".padEnd(widths[1]!), align: "left" },
      { header: "Note", align: "left" },
    ];
    const table = textTable(
      columns,
      rows.map(({ label, value, note }) => [label, value, note]),
    );
    return notGiven === "" ? table : `${table}${notGiven}\n`;
  });
  const remarks = [
    ...orderRemarks(sheet, format),
    ...(written === null ? [] : [orderWrittenSentence(written)]),
  ];
  return [
    `${heading(sheet.setup)}: order sheet\n`,
    ...tables,
    ...(remarks.length > 0 ? [`${remarks.join("\n")}\n`] : []),
    ORDER_CAUTIONS,
  ].join("\n");
}
