import { useEffect, useId, useRef, useState } from "react";
import type { OrderSheet } from "../../../studies/order/orderSheet.ts";
import { writeOrder } from "../../../studies/order/writeOrder.ts";
import { orderChanges, orderStandsSentence, PUT_ORDER } from "../../../studies/wording/orderOnPage.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { whenThere } from "../../parts/whenThere.ts";
import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { commitTyped } from "../../state/typing.ts";
import { workbench } from "../../state/workbench.ts";
import { keyWords } from "../../words/keyWords.ts";
import { NextDrawing } from "../unbuilt/NextDrawing.tsx";

export type PutIntoTruckProps = {
  sheet: OrderSheet;
  format: LengthFormat;
  /** Something of the setup is to be mended first: the sheet is of what it was before. */
  isBlocked: boolean;
};

/** Writes the order into the truck's blocks, once what will change has been read: old, new. It stays in view while the order is typed. */
export function PutIntoTruck({ sheet, format, isBlocked }: PutIntoTruckProps) {
  const id = useId();
  const put = useRef<HTMLDivElement>(null);
  const [isAsked, setIsAsked] = useState(false);
  // It stays in view no more with its table open.
  useEffect(() => {
    if (!isAsked) return;
    put.current?.scrollIntoView({ block: "nearest" });
    put.current?.querySelector<HTMLElement>(".order-confirm")?.focus({ preventScroll: true });
  }, [isAsked]);
  const changes = orderChanges(sheet, format);
  const stands = orderStandsSentence(sheet);
  const differs = changes.length > 0;
  const confirm = () => {
    putIn(sheet);
    setIsAsked(false);
    // The button pressed is gone; the way on stands in its place.
    whenThere(
      () => put.current?.querySelector<HTMLElement>(".order-stands .button") ?? null,
      (next) => next.focus({ preventScroll: true }),
    );
  };
  return (
    <div ref={put} className="order-put" data-differs={differs}>
      <div className="order-stands">
        <p role="status">
          {differs && <span aria-hidden="true">! </span>}
          {stands}
        </p>
        {differs && (
          <button
            type="button"
            className="button"
            aria-expanded={isAsked}
            aria-controls={id}
            disabled={isBlocked}
            onClick={() => setIsAsked(!isAsked)}
          >
            {PUT_ORDER}
          </button>
        )}
        {!differs && stands !== "" && <NextDrawing isBuilt={sheet.setup.build !== null} isBare />}
      </div>
      <div id={id} hidden={!isAsked || isBlocked || !differs}>
        {isAsked && differs && (
          <>
            <table className="order-changes">
              <caption>What will change</caption>
              <thead>
                <tr>
                  <th scope="col">Field</th>
                  <th scope="col">Now</th>
                  <th scope="col">As ordered</th>
                </tr>
              </thead>
              <tbody>
                {changes.map(({ label, from, to, why }) => (
                  <tr key={label}>
                    <th scope="row">
                      {label}
                      {why !== "" && <small className="order-why">{keyWords(why)}</small>}
                    </th>
                    <td>{from}</td>
                    <td>
                      <span aria-hidden="true">→ </span>
                      {to}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
            <div className="row-tools">
              <button type="button" className="button order-confirm" onClick={confirm}>
                Put it in
              </button>
              <button type="button" className="button" onClick={() => setIsAsked(false)}>
                Leave the truck as it is
              </button>
            </div>
          </>
        )}
      </div>
    </div>
  );
}

/** As one step to undo. */
function putIn({ fields }: OrderSheet): void {
  commitTyped();
  const state = workbench.getState();
  const shown = shownDocument(state);
  const written = writeOrder(shown, fields, fileUnitsOf(shown)) as Readonly<Record<string, unknown>>;
  state.beginGesture();
  for (const block of ["knuckle", "wheel", "hardware"]) {
    const value = written[block];
    if (value !== (shown as Readonly<Record<string, unknown>> | null)?.[block])
      state.applySuggestion({ path: [block], value, kind: "nearest" });
  }
  state.endGesture();
}
