import type { Setup } from "../../setup/types/types.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import type { Model } from "../model/model.ts";

/** mm, radians. Numbers of trucks put together in different ways differ by rounding, which is far less. */
const ROUNDING = 1e-6;

/** What of a side's row the wheel and the tire decide, and where on the knuckle they stand. */
const OF_WHEEL: ReadonlySet<number> = new Set([
  SIDE.wheelCenter,
  SIDE.wheelCenter + 1,
  SIDE.wheelCenter + 2,
  SIDE.offset,
  SIDE.loadedRadius,
]);

/** The same text for two trucks whose wheels take the same poses and keep the same limits. */
export function linkageText({ frontEnd, setup }: Model): string {
  const { left, right } = frontEnd;
  const rows = [left, right].map(({ row, innerAtRest }) => [
    // What the tire carries is no part of the linkage.
    [...row].filter((_, i) => i !== SIDE.loadedRadius),
    innerAtRest,
  ]);
  const { limits, airSpring, travel, roll } = setup;
  return JSON.stringify([rows, setup.truck.steering, limits, airSpring, travel, roll !== null]);
}

/** The same text for two trucks that differ in nothing but the place of the wheel's center on the knuckle, the wheel and the tire. */
export function restText({ frontEnd, setup }: Model): string {
  const rows = [frontEnd.left, frontEnd.right].map(({ row, innerAtRest }) => [
    [...row].filter((_, i) => !OF_WHEEL.has(i)),
    innerAtRest,
  ]);
  const { truck, hardware } = setup;
  const body = truck.body.map((part) => (part.kind === "mesh" ? part.name : part));
  return JSON.stringify([rows, { ...truck, body }, hardware]);
}

/** The same text for two setups of one truck, rounding and the tire's loaded radius aside; a mesh goes by its name. */
export function shapeText({
  truck,
  knuckle,
  wheel,
  tire,
  hardware,
  alignment,
  limits,
  airSpring,
  travel,
  allowance,
}: Setup): string {
  const body = truck.body.map((part) => (part.kind === "mesh" ? part.name : part));
  const told = [
    { ...truck, body },
    knuckle,
    wheel,
    { ...tire, loadedRadius: null },
    [hardware, alignment, limits, airSpring, travel, allowance],
  ];
  return JSON.stringify(told, (_, value: unknown) =>
    typeof value === "number" ? Math.round(value / ROUNDING) + 0 : value,
  );
}
