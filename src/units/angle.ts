/** Degrees to radians; multiples of 90 give the nearest number to that multiple of π/2 (`deg / 180` is exact there). */
export function radFromDeg(deg: number): number {
  return (deg / 180) * Math.PI;
}

/** Radians to degrees; undoes `radFromDeg` exactly for multiples of 90. */
export function degFromRad(rad: number): number {
  return (rad / Math.PI) * 180;
}

/** An angle in radians as a person reads it, `8.4°`, with `decimals` digits after the point. Finite angles only. */
export function formatAngle(rad: number, decimals = 1): string {
  if (!Number.isFinite(rad)) throw new RangeError(`formatAngle: rad must be finite, got ${rad}`);
  const text = degFromRad(rad).toFixed(decimals);
  return `${Number(text) === 0 ? text.replace("-", "") : text}°`;
}
