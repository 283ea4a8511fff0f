import { keyText } from "../../../setup/types/keyPath.ts";
import { ASSUMED_LAYOUT } from "../../../setup/worksheet/assumedLayout.ts";
import { assumedName } from "../../../studies/wording/assumedWords.ts";
import {
  ASSUMED_ON_PAPER,
  readingRows,
  WITHIN_HEAD,
  WITHIN_NOTE,
} from "../../../studies/wording/readingRows.ts";
import { shownOf } from "../../state/madeOf.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";

/** What was read of the truck, each with how well it is known, and what is assumed where no reading tells. */
export function ReadingsPage({ truck }: { truck: Truck }) {
  const format = useFormat();
  const { setup } = truck;
  const document = shownOf(truck);
  const fields = setup.fromExample?.of === ASSUMED_LAYOUT ? setup.fromExample.fields : [];
  const rows = readingRows(setup, document, format);
  return (
    <>
      {rows.length > 0 && (
        <table className="packet-readings">
          <thead>
            <tr>
              <th scope="col">Reading</th>
              <th scope="col">Read</th>
              <th scope="col">{WITHIN_HEAD}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ key, name, value, within }) => (
              <tr key={key}>
                <th scope="row">{name}</th>
                <td>{value}</td>
                <td>{within === "" ? "–" : `± ${within}`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="packet-caution">{WITHIN_NOTE}</p>
      {fields.length > 0 && (
        <section className="packet-assumed">
          <h3>Still assumed</h3>
          <p>{ASSUMED_ON_PAPER}</p>
          <ul>
            {fields.map((path) => (
              <li key={keyText(path)}>{assumedName(path, document)}</li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
