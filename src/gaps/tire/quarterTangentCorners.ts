/**
 * Corners of a polyline drawn about a quarter ellipse with half-axes `a` (along u) and `b` (along v), in
 * shares of them: from the tangent u = 1 to the tangent v = 1, every side touching the ellipse, no point
 * inside it. The first corner has u = 1 and the last has v = 1, exactly.
 *
 * The sides touch at cos t, sin t with tan t = (b/a)^¼ tan τ, τ in equal steps. A corner stands off by about
 * p·Δt²/8, p the distance from center to tangent, which runs from a to b; those steps make the two ends equal.
 */
export function quarterTangentCorners(a: number, b: number, count: number): [u: number, v: number][] {
  // A quarter a thousand times longer than wide is a straight line; the cap keeps its steps apart.
  const stretch = Math.sqrt(Math.sqrt(Math.min(Math.max(b / a, 1e-3), 1e3)));
  const corners: [number, number][] = [];
  let cosHere = 1;
  let sinHere = 0;
  for (let i = 1; i <= count; i++) {
    const step = (i / count) * (Math.PI / 2);
    const along = Math.cos(step);
    const across = stretch * Math.sin(step);
    const length = Math.sqrt(along * along + across * across);
    const cosNext = i === count ? 0 : along / length;
    const sinNext = i === count ? 1 : across / length;
    // Where two tangents of the unit circle meet.
    const meet = 1 + cosHere * cosNext + sinHere * sinNext;
    corners.push([(cosHere + cosNext) / meet, (sinHere + sinNext) / meet]);
    cosHere = cosNext;
    sinHere = sinNext;
  }
  return corners;
}
