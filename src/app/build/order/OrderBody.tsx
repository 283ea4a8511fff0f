import "../../measure/editing.css";
import "../../measure/editingPoints.css";
import "../../measure/editingNarrow.css";
import "./order.css";
import { valueAt } from "../../../setup/types/keyPath.ts";
import { orderJson } from "../../../studies/documents/orderJson.ts";
import type { OrderSheet } from "../../../studies/order/orderSheet.ts";
import { newOrder } from "../../../studies/order/writeOrder.ts";
import { orderMisfitSentence } from "../../../studies/wording/orderMends.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { CatalogRow } from "../../parts/catalogs/CatalogRow.tsx";
import { NextStep } from "../../parts/NextStep.tsx";
import { knuckleFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { hasDraftIn, shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { keyWords } from "../../words/keyWords.ts";
import { OrderForm } from "./OrderForm.tsx";
import { OrderSheetPage } from "./OrderSheetPage.tsx";
import { useOrderSheet } from "./orderStands.tsx";
import { PutIntoTruck } from "./PutIntoTruck.tsx";

const ORDER = ["order"] as const;

/** The order of a knuckle: its form, what does not go together, and the sheet. */
export function OrderBody({ truck }: { truck: Truck }) {
  const format = useFormat();
  const isBegun = useWorkbench((s) => valueAt(shownDocument(s), ORDER) !== undefined);
  const isBlocked = useWorkbench((s) => s.issues.length > 0 || hasDraftIn(s, ORDER));
  const sheet = useOrderSheet(truck);
  if (!isBegun) return <BeginOrder />;
  return (
    <div className="order" data-board-undo="">
      {sheet && <PutIntoTruck sheet={sheet} format={format} isBlocked={isBlocked} />}
      {sheet && <Misfits sheet={sheet} format={format} />}
      <OrderForm sheet={sheet} format={format} />
      <CatalogRow />
      {isBlocked && (
        <p className="order-remark">
          Until the marked fields are fixed, the sheet shows the order as it was.
        </p>
      )}
      {sheet && (
        <SaveMenu of="the order" files={[knuckleFile(truck, "order", "The order", () => orderJson(sheet))]} />
      )}
      {sheet && <OrderSheetPage sheet={sheet} format={format} />}
      <button
        type="button"
        className="small-button"
        onClick={() => workbench.getState().removeField([...ORDER])}
      >
        Remove the order
      </button>
      <NextStep to="drawings" />
    </div>
  );
}

/** All that does not go together, at one look. */
function Misfits({ sheet, format }: { sheet: OrderSheet; format: LengthFormat }) {
  const { misfits } = sheet;
  if (misfits.length === 0) return null;
  return (
    <div className="order-misfits" role="status">
      <p>
        <span aria-hidden="true">✕ </span>
        {misfits.length === 1
          ? "One thing does not go together"
          : `${misfits.length} things do not go together`}
      </p>
      <ul>
        {misfits.map((misfit) => (
          <li key={`${misfit.at.join(".")} ${misfit.kind}`}>
            {keyWords(orderMisfitSentence(misfit, format, true))}
          </li>
        ))}
      </ul>
    </div>
  );
}

function BeginOrder() {
  const begin = () => {
    const state = workbench.getState();
    state.applySuggestion({ path: [...ORDER], value: newOrder(shownDocument(state)), kind: "nearest" });
  };
  return (
    <div className="order">
      <p className="part-note">
        An order says which knuckle is to be made: from which base, with how much drop, how narrow, and what
        it goes with. It begins with this truck’s own knuckle and wheel.
      </p>
      <button type="button" className="button" onClick={begin}>
        Begin an order
      </button>
    </div>
  );
}
