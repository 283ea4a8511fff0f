import "../../measure/editing.css";
import "../../measure/editingPoints.css";
import "../../measure/editingNarrow.css";
import "./order.css";
import type { KeyboardEvent } from "react";
import { valueAt } from "../../../setup/types/keyPath.ts";
import { orderJson } from "../../../studies/documents/orderJson.ts";
import type { OrderSheet } from "../../../studies/order/orderSheet.ts";
import { newOrder } from "../../../studies/order/writeOrder.ts";
import { orderMisfitSentence } from "../../../studies/wording/orderMends.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { CatalogRow } from "../../parts/catalogs/CatalogRow.tsx";
import { knuckleFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { whenThere } from "../../parts/whenThere.ts";
import { hasDraftIn, shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { keyWords } from "../../words/keyWords.ts";
import { NextDrawing } from "../unbuilt/NextDrawing.tsx";
import { KnuckleRubs } from "./KnuckleRubs.tsx";
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
    // biome-ignore lint/a11y/noStaticElementInteractions: its fields are typed into; Enter only goes from one to the next
    <div className="order" data-board-undo="" onKeyDown={goOn}>
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
      <KnuckleRubs truck={truck} />
      <NextDrawing isBuilt={truck.bolted.setup.build !== null} />
    </div>
  );
}

/** Enter in a field goes on to the next that is not folded away, and after the last to the button that puts the order in. */
function goOn({ key, target, currentTarget: order }: KeyboardEvent<HTMLElement>): void {
  if (key !== "Enter" || !(target instanceof HTMLInputElement)) return;
  const fields = [...order.querySelectorAll<HTMLElement>(".group :is(input, select)")];
  const after = fields.slice(fields.indexOf(target) + 1).find((field) => field.checkVisibility());
  const next = after ?? order.querySelector<HTMLElement>(".order-put .button");
  next?.focus();
  if (next instanceof HTMLInputElement) next.select();
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
    whenThere(
      () => document.querySelector<HTMLElement>('.order [data-field="order.number"] input'),
      (field) => field.focus(),
    );
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
