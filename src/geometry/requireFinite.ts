/**
 * Refuses bounds that are not finite before a walk starts between them: halving and stepping toward NaN or infinity
 * never arrives. @param where the function, for the message @throws RangeError
 */
export function requireFinite(where: string, ...values: readonly number[]): void {
  if (values.every(Number.isFinite)) return;
  throw new RangeError(`${where}: needs finite bounds, got ${values.join(", ")}`);
}

/** Refuses a tolerance or step that no walk gets below: not finite, 0 or less. @throws RangeError */
export function requirePositive(where: string, value: number): void {
  if (Number.isFinite(value) && value > 0) return;
  throw new RangeError(`${where}: needs a finite tolerance of more than 0, got ${value}`);
}
