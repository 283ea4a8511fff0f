/**
 * The next whole step in a direction: from between two steps it goes to the nearer end of the two, so that a
 * stepped value always reads as a round one. @param way −1 or +1; @param count how many steps
 */
export function stepTo(value: number, step: number, way: 1 | -1, count = 1): number {
  const at = value / step;
  const nearest = Math.round(at);
  const isOnStep = Math.abs(at - nearest) < 1e-6;
  const from = isOnStep ? nearest : way > 0 ? Math.floor(at) : Math.ceil(at);
  return (from + way * count) * step;
}
