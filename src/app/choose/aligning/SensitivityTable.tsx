import type { Sensitivity } from "../../../studies/alignment/sensitivities.ts";
import { lengthText } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { MM_PER_INCH } from "../../../units/lengthUnits.ts";
import type { LengthDisplay } from "../../state/preferences.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { signedAngle } from "./settingFormat.ts";

/** How much shim is told of, mm, where a person chose how lengths are shown. */
const CHOSEN: Readonly<Record<Exclude<LengthDisplay, "file">, number>> = {
  "1/16": MM_PER_INCH / 16,
  "1/32": MM_PER_INCH / 32,
  "1/64": MM_PER_INCH / 64,
  decimal: MM_PER_INCH / 100,
  mm: 1,
};

/** Of how much more shim its effect is told, mm: the fraction chosen, else `otherwise`, 1/32 in or 1 mm by the file. */
function sensitivityPer(lengths: LengthDisplay, otherwise: number): number {
  return lengths === "file" ? otherwise : CHOSEN[lengths];
}

export type SensitivityTableProps = {
  sensitivities: readonly Sensitivity[];
  /** What is set: "shim", "eccentric travel", "leg". */
  what: string;
  format: LengthFormat;
};

/** What a little more of each setting does to camber and caster, and to toe until the tie rod is set again. */
export function SensitivityTable({ sensitivities, what, format }: SensitivityTableProps) {
  const lengths = useWorkbench((s) => s.preferences.lengths);
  const [first] = sensitivities;
  if (!first) return null;
  const per = sensitivityPer(lengths, first.per);
  const change = (rad: number) => signedAngle((rad / first.per) * per);
  return (
    <table>
      <caption>
        What {keepTogether(lengthText(per, format))} more {what} does, from where it is set
      </caption>
      <thead>
        <tr>
          <td />
          <th scope="col">Camber</th>
          <th scope="col">Caster</th>
          <th scope="col">Toe, until set again</th>
        </tr>
      </thead>
      <tbody>
        {sensitivities.map(({ name, camber, caster, toeUntilSet }) => (
          <tr key={name}>
            <th scope="row">{name === "both legs" ? name : `at the ${name}`}</th>
            <td>{change(camber)}</td>
            <td>{change(caster)}</td>
            <td>{change(toeUntilSet)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
