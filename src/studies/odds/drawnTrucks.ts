import { keyText } from "../../setup/types/keyPath.ts";
import type { ModelResult } from "../model/model.ts";
import { normalQuantile } from "../numeric/normalQuantile.ts";
import { ScatteredPoints } from "../numeric/scatteredPoints.ts";
import type { TruckToVary } from "../window/truckOverField.ts";
import { type WindowField, windowField } from "../window/windowField.ts";
import { type OddsInput, oddsInputs } from "./oddsInputs.ts";
import { type OddsTruck, oddsTruck } from "./oddsTruck.ts";
import { type MovingInput, readInputs } from "./readInputs.ts";

/** What keeps a drawn value inside the ends of its field, mm or radians: an end may not be allowed itself. */
const INSIDE = 1e-6;

/** Trucks as they may be, one a draw: the same from the same seed on every machine. */
export class DrawnTrucks {
  readonly inputs: readonly OddsInput[];
  /** Keys of numbers whose uncertainty moves no gap, or cannot be drawn. */
  readonly leftOut: readonly string[];
  private readonly truck: OddsTruck;
  /** Each number that any input moves, and by how much one standard deviation of each does. */
  private readonly moved: readonly {
    readonly field: WindowField;
    readonly by: readonly (readonly [input: number, amount: number])[];
  }[];
  private readonly points: ScatteredPoints;

  /** @param seed a whole number */
  constructor(truck: TruckToVary, seed: number) {
    const told = new Set(truck.setup.within.map(({ path }) => keyText(path)));
    const read = readInputs(truck.document, told);
    const byReading = new Set(read.inputs.flatMap(({ moves }) => moves.map(({ path }) => keyText(path))));
    const { inputs, leftOut } = oddsInputs(truck.setup, byReading);
    const asked = [
      ...inputs.map(
        (input): MovingInput => ({
          ...input,
          moves: [{ path: input.path, by: input.within }, ...read.movesWith(input)],
        }),
      ),
      ...read.inputs,
    ];
    const paths = asked.flatMap(({ moves }) => moves.map(({ path }) => path));
    this.truck = oddsTruck(
      truck,
      new Set(paths.flatMap((path) => (path[1] === "body" ? [Number(path[2])] : []))),
    );
    const { document, setup, file } = this.truck;
    // A tire given another diameter forgets its loaded radius: that is written after it.
    const isLate = (key: string) => key === "tire.loadedRadius";
    const keys = [...new Set(paths.map(keyText))].toSorted((a, b) => Number(isLate(a)) - Number(isLate(b)));
    const fields = new Map(keys.map((key) => [key, windowField(document, setup, key, file)] as const));
    const isDrawn = ({ moves }: MovingInput) => moves.some(({ path }) => fields.get(keyText(path))!.ok);
    const drawn = asked.filter(isDrawn);
    this.inputs = drawn.map(({ moves: _, ...input }) => input);
    this.moved = [...fields].flatMap(([key, field]) => {
      if (!field.ok) return [];
      const by = drawn.flatMap(({ moves }, i) =>
        moves.filter(({ path }) => keyText(path) === key).map((move) => [i, move.by] as const),
      );
      return [{ field: field.value, by }];
    });
    this.leftOut = [...leftOut, ...asked.filter((input) => !isDrawn(input)).map(({ key }) => key)];
    this.points = new ScatteredPoints(this.inputs.length, seed);
  }

  /** How far each number is off in a draw, in standard deviations. @param draw from 0 */
  deviationsTo(out: Float64Array, draw: number): void {
    this.points.pointTo(out, draw);
    for (let i = 0; i < out.length; i++) out[i] = normalQuantile(out[i]!);
  }

  /** The truck with each number off by so much; a field's ends are not passed. */
  at(deviations: Float64Array): ModelResult {
    const document = this.moved.reduce((drawn: unknown, { field, by }) => {
      const value = by.reduce((sum, [input, amount]) => sum + amount * deviations[input]!, field.now);
      const inside = Math.min(Math.max(value, field.least + INSIDE), field.most - INSIDE);
      return field.put(drawn, inside);
    }, this.truck.document);
    return this.truck.made(document);
  }
}
