import { length } from "../../../geometry/vec.ts";
import type { LoadsCase } from "../../../studies/loads/loadsReport.ts";
import { FORCE_WORDS, forceNumber } from "../../../studies/wording/loadsWords.ts";
import { ScrollTable } from "../../parts/ScrollTable.tsx";
import { useFormat } from "../../state/useWorkbench.ts";

const NAMES = Object.keys(FORCE_WORDS) as (keyof typeof FORCE_WORDS)[];

/** Every force of a case by its parts and its size. */
export function ForceTable({ one }: { one: LoadsCase }) {
  const { units } = useFormat();
  const rows = [
    ...one.applied.map(({ force }, i) => ({
      name: i === 0 ? "Load on the wheel" : "Unsprung weight",
      force,
    })),
    ...NAMES.flatMap((name) => {
      const put = one.on[name];
      return put === null ? [] : [{ name: FORCE_WORDS[name], force: put.force }];
    }),
  ];
  return (
    <ScrollTable label="Forces on the knuckle; of spring and bump stop on their arm">
      <caption>
        Forces on the knuckle, of spring and bump stop on their arm, {units === "in" ? "lb" : "N"}
      </caption>
      <thead>
        <tr>
          <th scope="col">Force</th>
          <th scope="col">x, forward</th>
          <th scope="col">y, left</th>
          <th scope="col">z, up</th>
          <th scope="col">Size</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, force }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {[...force, length(force)].map((n, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place
              <td key={i}>{forceNumber(n, units)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
