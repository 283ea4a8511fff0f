import type { TireDesignDimensions } from "./designDimensions.ts";

/** Share by which a new tire's section height and section width may pass the design value. */
const GROWTH = 1.04;

/** Largest overall diameter and section width, mm, that a new tire may have and still be of its size. */
export interface LargestNewTire {
  readonly diameter: number;
  readonly sectionWidth: number;
}

/**
 * The largest radial tire sold as this size: section height and section width 4 % over design, on the
 * measuring rim (UN R30 par. 6.1.4 and 6.1.5, from memory; a US design guide is quoted with 3 % in height).
 * A protective rib may add 8 mm more. Worn tires are smaller; service growth is not counted.
 */
export function largestNewTire(design: TireDesignDimensions): LargestNewTire {
  const twiceSectionHeight = design.diameter - design.rimDiameterNominal;
  return {
    diameter: design.rimDiameterNominal + GROWTH * twiceSectionHeight,
    sectionWidth: GROWTH * design.measuringSectionWidth,
  };
}
