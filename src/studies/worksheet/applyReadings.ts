import type { Vec3 } from "../../geometry/vec.ts";
import { bodyPointOf, TRUCK_POINTS } from "../../setup/blocks/readings/readingPoint.ts";
import { asExample, exampleFields, exampleOf, withMine } from "../../setup/exampleMarks.ts";
import { pathOfPoint } from "../../setup/givenPoints.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { isWithin, type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { ASSUMED_LAYOUT, isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import { degFromRad } from "../../units/angle.ts";
import { mmFromUnits, unitsFromMm } from "../../units/lengthUnits.ts";
import { plainLengthText } from "../../units/plainLengthText.ts";
import { type FoundValue, knuckleValues, sizeValues } from "../measure/appliedValues.ts";
import { ASSUMED_VALUES } from "../measure/assumedDocument.ts";
import type { Measured, MeasuredPoint } from "../measure/measured.ts";
import { withReadings } from "./withReadings.ts";

/** Decimals a point is written with: far finer than it was measured, coarse enough to be read. */
const DECIMALS: Readonly<Record<LengthUnit, number>> = { in: 3, mm: 2 };

/**
 * A copy of a setup document in which the points of the truck are as measured, with what readings tell of wheel, tire and
 * knuckle; the same document where nothing differs. What is still empty after that is filled from the assumed layout and marked as
 * its numbers (`fromExample`), so that no answer is drawn green for them; what the setup says of its own stays unless
 * readings tell it. What began as the assumed layout is written as the page writes it. Take the copy of a document with its
 * variant applied to a variant with `editShown`.
 */
export function applyReadings(document: unknown, measured: Measured, units: LengthUnit): unknown {
  if (isOnAssumedLayout(document)) return withReadings(document);
  const writer = new Writer(document, units);
  const points = measured.points.filter(({ side }) => side === "left");
  const isNew = points.some(({ point, standing }) => isOfTruck(point) && isAssumed(standing));
  const hasLip = points.some(({ point, standing }) => bodyPointOf(point) !== null && !isAssumed(standing));
  // A truck that is its owner's own and says nothing of a body has none.
  for (const point of points)
    if (isNew || hasLip || bodyPointOf(point.point) === null) writePoint(writer, point);
  const right = measured.points.find((one) => one.point === "steering.innerEnd" && one.side === "right");
  if (right && valueAt(document, ["truck", "steering", "type"]) === "pitman") {
    const [x, y, z] = right.at;
    writer.write(["truck", "steering", "innerEndRight"], writer.point([x, -y, z]), true);
  }
  for (const value of sizeValues(measured, writer.document, units)) writeValue(writer, value);
  for (const value of knuckleValues(measured, writer, units)) writeValue(writer, value);
  for (const [path, value, kind] of ASSUMED_VALUES) {
    if (!belongs(path, writer.document)) continue;
    writer.fill(path, kind === "angle" ? value : writer.typed(value, kind));
  }
  return writer.marked();
}

/** What of the assumed values has no place in a document that is a setup of another kind. */
function belongs(path: KeyPath, document: unknown): boolean {
  const has = (key: string, of: string) => {
    const value = valueAt(document, [of, key]);
    return value !== undefined && value !== "";
  };
  const [of, key] = path;
  const last = path.at(-1);
  if (last === "stroke" || last === "swing")
    return (valueAt(document, ["truck", "steering", "type"]) === "pitman") === (last === "swing");
  if (of === "tire") return !has("size", "tire") && !has("profile", "tire");
  return !(of === "wheel" && key === "backspacing" && has("offset", "wheel"));
}

function writeValue(
  writer: Writer,
  { path, value, kind, isMeasured, onlyIfOpen, removes }: FoundValue,
): void {
  if (onlyIfOpen && !writer.isOpen(path)) return;
  writer.write(path, writer.typed(value, kind), isMeasured);
  for (const key of removes ?? []) writer.remove(key);
}

function isOfTruck(point: string): boolean {
  return TRUCK_POINTS.some((one) => one === point);
}

function isAssumed(standing: MeasuredPoint["standing"]): boolean {
  return standing.every((one) => one === "assumed");
}

function writePoint(writer: Writer, { point, at, standing }: MeasuredPoint): void {
  if (standing.every((one) => one === "given")) return;
  const part = bodyPointOf(point);
  if (!isOfTruck(point) && part === null) return;
  const path = part ? writer.bodyPath(point, part, at) : pathOfPoint(point, writer.document);
  if (path === null) return;
  const isTold = standing.some((one) => one === "measured" || one === "partly");
  if (!isTold) {
    writer.fill(path, writer.point(at));
    return;
  }
  writer.write(path, writer.point(at), false);
  standing.forEach((one, axis) => {
    if (one !== "assumed") writer.own([...path, axis]);
  });
}

/** Writes values into a copy and keeps which of them are the truck's own. */
class Writer {
  document: unknown;
  readonly #before: unknown;
  readonly #units: LengthUnit;
  readonly #mine: KeyPath[] = [];
  readonly #assumed: KeyPath[] = [];

  constructor(document: unknown, units: LengthUnit) {
    this.document = document;
    this.#before = document;
    this.#units = units;
  }

  length(mm: number): string | number {
    const rounded = mmFromUnits(
      Number(unitsFromMm(mm, this.#units).toFixed(DECIMALS[this.#units])),
      this.#units,
    );
    const text = plainLengthText(rounded, this.#units);
    return String(Number(text)) === text ? Number(text) : text;
  }

  /** A value as the file has it. */
  typed(value: FoundValue["value"], kind: FoundValue["kind"]): unknown {
    if (kind === "angle" && typeof value === "number") return Number(degFromRad(value).toFixed(3));
    if (typeof value === "number") return this.length(value);
    return value.map((one) =>
      typeof one === "number" ? this.length(one) : one.map((mm) => this.length(mm)),
    );
  }

  point(at: Vec3): readonly (string | number)[] {
    return at.map((mm) => this.length(mm));
  }

  /** Writes a value over what stands there. @param isMine it is the truck's own */
  write(path: KeyPath, value: unknown, isMine: boolean): void {
    this.document = setAt(this.document, path, value);
    if (isMine) this.own(path);
    else this.#assumed.push(path);
  }

  /** Writes an assumed value where nothing stands. */
  fill(path: KeyPath, value: unknown): void {
    if (!this.isOpen(path)) return;
    this.write(path, value, false);
  }

  own(path: KeyPath): void {
    this.#mine.push(path);
  }

  remove(path: KeyPath): void {
    this.document = removeAt(this.document, path);
  }

  /** Where a body part's point stands; a part or points that are not there yet are made. Null = not a path's. */
  bodyPath(
    point: string,
    { part, key, at }: { readonly part: string; readonly key: string; readonly at: number | null },
    first: Vec3,
  ): KeyPath | null {
    const known = pathOfPoint(point, this.document);
    const index = known?.[2];
    if (at === null || key !== "points") return known;
    if (index === undefined) {
      const body = (valueAt(this.document, ["truck", "body"]) ?? []) as readonly unknown[];
      const made = { name: part, kind: "path", radius: this.length(3.175), points: [this.point(first)] };
      this.document = setAt(this.document, ["truck", "body"], [...body, made]);
      this.#assumed.push(["truck", "body", body.length]);
      return this.bodyPath(point, { part, key, at }, first);
    }
    const list = ["truck", "body", index, "points"] as const;
    const points = valueAt(this.document, list);
    if (!Array.isArray(points)) return null;
    if (points.length <= at) {
      const more = Array.from({ length: at + 1 - points.length }, () => this.point(first));
      this.document = setAt(this.document, list, [...points, ...more]);
    }
    return [...list, at];
  }

  /** The document with what is assumed marked as such; without a mark when nothing is. */
  marked(): unknown {
    if (this.document === this.#before) return this.document;
    const name = exampleOf(this.#before);
    if (name !== null) return withMine(this.document, this.#mine);
    const before = exampleFields(asExample(this.#before, ASSUMED_LAYOUT));
    const kept = before.filter(
      (path) => !this.#assumed.some((one) => isWithin(path, one) || isWithin(one, path)),
    );
    const marked = withMine(asExample(this.document, ASSUMED_LAYOUT), [...kept, ...this.#mine]);
    return exampleFields(marked).length === 0 ? this.document : marked;
  }

  /** Whether nothing stands there. */
  readonly isOpen = (path: KeyPath): boolean => {
    const value = valueAt(this.document, path);
    return value === undefined || value === "" || (Array.isArray(value) && value.some((one) => one === ""));
  };
}
