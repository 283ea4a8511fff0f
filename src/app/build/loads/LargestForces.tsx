import { type LoadsReport, largestForces } from "../../../studies/loads/loadsReport.ts";
import { boundNumber, casePoseWords, FORCE_WORDS, forceNumber } from "../../../studies/wording/loadsWords.ts";
import { ScrollTable } from "../../parts/ScrollTable.tsx";
import { useFormat } from "../../state/useWorkbench.ts";

/** Each force where it is largest of all cases and poses, and what no pose passes. */
export function LargestForces({ worst }: Pick<LoadsReport, "worst">) {
  const format = useFormat();
  return (
    <ScrollTable label="Largest forces over all travel and both locks">
      <caption>Largest over all travel and both locks, {format.units === "in" ? "lb" : "N"}</caption>
      <thead>
        <tr>
          <th scope="col">Force</th>
          <th scope="col">Largest found</th>
          <th scope="col">No pose passes</th>
        </tr>
      </thead>
      <tbody>
        {largestForces(worst).map((one) => (
          <tr key={one.name}>
            <th scope="row">
              {FORCE_WORDS[one.name]}{" "}
              <small>
                “{one.case}”, {casePoseWords(one, format)}
              </small>
            </th>
            <td>{forceNumber(one.size, format.units)}</td>
            <td>{boundNumber(one, format.units)}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
