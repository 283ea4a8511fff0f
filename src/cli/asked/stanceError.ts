import type { Model } from "../../studies/model/model.ts";
import { formatOf } from "../../studies/wording/formatOf.ts";
import { formatLength } from "../../units/formatLength.ts";
import { InputError } from "./inputError.ts";

/** Why a truck cannot be aligned: it does not stand at its targets' stance, or not with that toe. @param travel mm */
export function stanceError(file: string, { setup }: Model, travel: number): InputError {
  const height = formatLength(travel, formatOf(setup));
  const mend = `the front end does not reach travel ${height} with the wheels straight ahead and that toe; choose a stance it reaches, or less toe`;
  const value = JSON.stringify(setup.alignment.targets?.stance ?? null);
  return new InputError([{ file, key: "alignment.targets.stance", value, mend }]);
}
