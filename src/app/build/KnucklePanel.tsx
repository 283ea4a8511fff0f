import "./knucklePanel.css";
import { truckName } from "../../studies/wording/truckName.ts";
import { readText } from "../parts/plotNumbers.ts";
import type { Truck } from "../state/truck.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { knuckleNumbers, type NumberGroup } from "./knuckleNumbers.ts";

/** The knuckle's numbers: what it is built to, and what the truck makes of it. */
export function KnucklePanel({ truck }: { truck: Truck }) {
  const format = useFormat();
  const variant = useWorkbench((s) => s.variant);
  return (
    <section className="knuckle-numbers" aria-labelledby="knuckle-title">
      <h2 id="knuckle-title" className="label">
        The knuckle of {variant === null ? `the ${truckName(null)}` : `the variant “${variant}”`}: left side;
        the right is its mirror image
      </h2>
      {knuckleNumbers(truck).map((group) => (
        <NumberTable key={group.title} group={group} format={format} />
      ))}
      <p className="knuckle-note">
        Dimensions in the knuckle’s own axes: from the lower ball joint, forward, outboard and up the steering
        axis. They are what the setup says, not what a part can carry: have its strength reviewed by a
        licensed engineer, and follow local codes.
      </p>
    </section>
  );
}

function NumberTable({ group, format }: { group: NumberGroup; format: ReturnType<typeof useFormat> }) {
  return (
    <table>
      <caption>{group.title}</caption>
      <tbody>
        {group.numbers.map(({ name, note, measure, value }) => (
          <tr key={name}>
            <th scope="row">
              {name} {note !== undefined && <small>{note}</small>}
            </th>
            <td>{value === null ? "–" : readText(value, measure, format)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
