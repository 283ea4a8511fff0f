import type { ModelResult } from "../model/model.ts";
import { normalQuantile } from "../numeric/normalQuantile.ts";
import { ScatteredPoints } from "../numeric/scatteredPoints.ts";
import type { TruckToVary } from "../window/truckOverField.ts";
import { type WindowField, windowField } from "../window/windowField.ts";
import { type OddsInput, oddsInputs } from "./oddsInputs.ts";
import { type OddsTruck, oddsTruck } from "./oddsTruck.ts";

/** What keeps a drawn value inside the ends of its field, mm or radians: an end may not be allowed itself. */
const INSIDE = 1e-6;

/** Trucks as they may be, one a draw: the same from the same seed on every machine. */
export class DrawnTrucks {
  readonly inputs: readonly OddsInput[];
  /** Keys of numbers whose uncertainty moves no gap, or cannot be drawn. */
  readonly leftOut: readonly string[];
  private readonly truck: OddsTruck;
  private readonly fields: readonly WindowField[];
  private readonly points: ScatteredPoints;

  /** @param seed a whole number */
  constructor(truck: TruckToVary, seed: number) {
    const { inputs, leftOut } = oddsInputs(truck.setup);
    const parts = inputs.flatMap(({ path }) => (path[1] === "body" ? [Number(path[2])] : []));
    this.truck = oddsTruck(truck, new Set(parts));
    const { document, setup, file } = this.truck;
    const found = inputs.map((input) => ({ input, field: windowField(document, setup, input.key, file) }));
    const drawn = found.flatMap(({ input, field }) => (field.ok ? [{ input, field: field.value }] : []));
    this.inputs = drawn.map(({ input }) => input);
    this.fields = drawn.map(({ field }) => field);
    this.leftOut = [...leftOut, ...found.flatMap(({ input, field }) => (field.ok ? [] : [input.key]))];
    this.points = new ScatteredPoints(this.inputs.length, seed);
  }

  /** How far each number is off in a draw, in standard deviations. @param draw from 0 */
  deviationsTo(out: Float64Array, draw: number): void {
    this.points.pointTo(out, draw);
    for (let i = 0; i < out.length; i++) out[i] = normalQuantile(out[i]!);
  }

  /** The truck with each number off by so much; a field's ends are not passed. */
  at(deviations: Float64Array): ModelResult {
    const document = this.fields.reduce((drawn: unknown, field, i) => {
      const value = field.now + this.inputs[i]!.within * deviations[i]!;
      const inside = Math.min(Math.max(value, field.least + INSIDE), field.most - INSIDE);
      return field.put(drawn, inside);
    }, this.truck.document);
    return this.truck.made(document);
  }
}
