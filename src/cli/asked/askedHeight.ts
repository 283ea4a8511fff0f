import { nearestWord } from "../../units/words.ts";
import { InputError } from "./inputError.ts";
import { readLength } from "./readNumbers.ts";
import type { Truck } from "./readTruck.ts";

/** A height as it is asked for: by one of the setup's stances or by wheel travel. */
export interface HeightOptions {
  readonly stance?: string | undefined;
  readonly travel?: string | undefined;
}

/** The wheel travel of `--stance` or `--travel`, mm, + = bump; null = neither was typed. @throws InputError */
export function askedHeight(truck: Truck, { stance, travel }: HeightOptions): number | null {
  const { file, model } = truck;
  if (stance !== undefined && travel !== undefined)
    throw InputError.ofOption(file, "--travel", travel, "cannot be used with --stance; choose one of them");
  if (stance !== undefined) return stanceTravel(truck, stance);
  return travel === undefined
    ? null
    : readLength(travel, model.setup.units, { file, option: "--travel", value: travel });
}

function stanceTravel(truck: Truck, name: string): number {
  const { stances } = truck.model.setup;
  const found = stances.find((stance) => stance.name === name);
  if (found) return found.travel;
  const names = stances.map((stance) => stance.name);
  const near = nearestWord(name, names);
  const hint =
    near !== null
      ? `did you mean "${near}"?`
      : names.length > 0
        ? `the file's stances are ${names.map((one) => `"${one}"`).join(", ")}`
        : "the file has no stances; give --travel";
  throw InputError.ofOption(truck.file, "--stance", name, `no such stance; ${hint}`);
}
