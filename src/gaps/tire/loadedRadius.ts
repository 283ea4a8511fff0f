/**
 * Loaded over free radius where nobody measured it. Radial tires at their rated load and pressure stand at
 * about 0.91 (tall sidewalls) to 0.96 (low ones) of the free radius: common practice, no source. 0.95 is for
 * a lowered truck, whose front tires are rarely at rated load. Worth measuring: it is floor to wheel center.
 */
const LOADED_SHARE = 0.95;

/** Default wheel center to floor, mm, for a tire of this free (unloaded) radius; good to about ±3 %. */
export function defaultLoadedRadius(freeRadius: number): number {
  return LOADED_SHARE * freeRadius;
}
