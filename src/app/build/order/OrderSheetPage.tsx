import type { OrderSheet } from "../../../studies/order/orderSheet.ts";
import { ORDER_CAUTIONS } from "../../../studies/wording/cautions.ts";
import { orderPageRemarks } from "../../../studies/wording/orderOnPage.ts";
import { orderGroups } from "../../../studies/wording/orderRows.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { printAlone } from "../../parts/printAlone.ts";
import { keepTogether, keyWords } from "../../words/keyWords.ts";

export type OrderSheetPageProps = { sheet: OrderSheet; format: LengthFormat };

/** The sheet as it is printed for the shop: every number with how it is measured. */
export function OrderSheetPage({ sheet, format }: OrderSheetPageProps) {
  return (
    <section className="order-sheet" aria-labelledby="order-sheet-title">
      <header className="order-sheet-head">
        <h3 id="order-sheet-title">Order sheet</h3>
        <button type="button" className="button" onClick={() => printAlone("order")}>
          Print
        </button>
      </header>
      {orderGroups(sheet, format).map(({ title, rows, notGiven }) => (
        <table key={title}>
          <caption>{title}</caption>
          <tbody>
            {rows.map(({ label, value, note }) => (
              <tr key={label}>
                <th scope="row">
                  {label} {note !== "" && <small>{note}</small>}
                </th>
                <td>{keepTogether(value)}</td>
              </tr>
            ))}
            {notGiven !== "" && (
              <tr className="order-open">
                <td colSpan={2}>{notGiven}</td>
              </tr>
            )}
          </tbody>
        </table>
      ))}
      {orderPageRemarks(sheet, format).map((sentence) => (
        <p key={sentence} className="order-remark">
          {keyWords(sentence)}
        </p>
      ))}
      <p className="order-remark">{ORDER_CAUTIONS}</p>
    </section>
  );
}
