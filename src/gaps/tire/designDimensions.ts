import type { FlotationTireSize, MetricTireSize, TireSize } from "../../units/tireSize.ts";

/** What a tire of one size measures on one rim, by the design rules; mm. */
export interface TireDesignDimensions {
  /** Overall diameter, inflated, unloaded. */
  readonly diameter: number;
  /** Section width on the rim given, not rounded; without raised letters and protective ribs. */
  readonly sectionWidth: number;
  /** Nominal rim diameter of the size's code, as the tire standards round it (16 → 406). */
  readonly rimDiameterNominal: number;
  /** Rim width the size's tabled section width is measured on. */
  readonly measuringRimWidth: number;
  /** Section width on the measuring rim, rounded as the tables print it. */
  readonly measuringSectionWidth: number;
}

const MM_PER_INCH = 25.4;

/** Section width gained per mm of rim width (UN R30 and R54, par. 6.1.1.1). */
const WIDTH_PER_RIM_WIDTH = 0.4;

/** Nearest whole number, .5 up (ISO 4000-1 cl. 6.1). All values here are positive. */
const roundHalfUp = (value: number): number => Math.floor(value + 0.5);

/** Rim width code to the nearest half inch, as mm. */
const toHalfInch = (width: number): number => (roundHalfUp((2 * width) / MM_PER_INCH) / 2) * MM_PER_INCH;

/** 254/10 keeps 17.5 at 444.5 exactly, which rounds to the tabled 445; 25.4 × 17.5 falls short of it. */
const nominalRimDiameter = (rimCode: number): number => roundHalfUp((rimCode * 254) / 10);

/** Share of the nominal width that the theoretical rim has (ISO 4000-1 / ETRTO, from memory). */
function theoreticalRimShare(aspectPercent: number): number {
  // Under 30 no rule is known to us; the smaller share gives the wider tire, the safe side.
  return aspectPercent >= 50 ? 0.7 : 0.85;
}

/** Share of the nominal width that the measuring rim has (ISO 4000-1 / ETRTO, from memory). */
function measuringRimShare(aspectPercent: number): number {
  if (aspectPercent >= 75) return 0.7;
  if (aspectPercent >= 60) return 0.75;
  if (aspectPercent >= 50) return 0.8;
  if (aspectPercent >= 45) return 0.85;
  return aspectPercent >= 30 ? 0.9 : 0.92;
}

function metricDimensions(size: MetricTireSize, rimWidth: number): TireDesignDimensions {
  const rimDiameterNominal = nominalRimDiameter(size.rimCode);
  const sectionHeight = roundHalfUp((size.nominalWidthMm * size.aspectPercent) / 100);
  const theoreticalRim = theoreticalRimShare(size.aspectPercent) * size.nominalWidthMm;
  const widthOn = (rim: number): number => size.nominalWidthMm + WIDTH_PER_RIM_WIDTH * (rim - theoreticalRim);
  const measuringRimWidth = toHalfInch(measuringRimShare(size.aspectPercent) * size.nominalWidthMm);
  return {
    diameter: rimDiameterNominal + 2 * sectionHeight,
    sectionWidth: widthOn(rimWidth),
    rimDiameterNominal,
    measuringRimWidth,
    measuringSectionWidth: roundHalfUp(widthOn(measuringRimWidth)),
  };
}

/** Measuring rim of a flotation size over its nominal width: assumed, no source; fits the sizes we know. */
const FLOTATION_MEASURING_RIM_SHARE = 0.8;

function flotationDimensions(size: FlotationTireSize, rimWidth: number): TireDesignDimensions {
  const nominalWidth = size.nominalWidthInches * MM_PER_INCH;
  const measuringRimWidth = toHalfInch(FLOTATION_MEASURING_RIM_SHARE * nominalWidth);
  return {
    diameter: size.nominalDiameterInches * MM_PER_INCH,
    sectionWidth: nominalWidth + WIDTH_PER_RIM_WIDTH * (rimWidth - measuringRimWidth),
    rimDiameterNominal: nominalRimDiameter(size.rimCode),
    measuringRimWidth,
    measuringSectionWidth: roundHalfUp(nominalWidth),
  };
}

/**
 * Design dimensions of a tire size on a rim of width `rimWidth` (between the flanges, mm).
 *
 * Metric: section height = width × aspect, rounded .5 up, twice that on the rounded rim diameter; section width
 * moves by 0.4 mm per mm of rim width away from the theoretical rim (UN R30 / R54 par. 6.1.1.1, ISO 4000-1).
 * Flotation: the nominal diameter, which is some 6 to 12 mm over the tabled one (for clearance the safe side),
 * and the nominal width on the measuring rim, where tables run up to about 1.5 mm wider; the same 0.4 mm per
 * mm away from that rim is our assumption.
 *
 * A tire in the hand differs: see `largestNewTire`. Measured dimensions are always better.
 * @throws RangeError if `rimWidth` is not a positive finite number.
 */
export function tireDesignDimensions(size: TireSize, rimWidth: number): TireDesignDimensions {
  if (!(rimWidth > 0 && Number.isFinite(rimWidth))) {
    throw new RangeError(`tireDesignDimensions: rimWidth needs a positive length in mm, got ${rimWidth}`);
  }
  return size.kind === "metric" ? metricDimensions(size, rimWidth) : flotationDimensions(size, rimWidth);
}

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

/** A user's mistake in the tire or wheel: which key, and what would be right, one sentence without a full stop. */
export interface TireIssue {
  readonly key: string;
  readonly mend: string;
}

/** A length for a mend, in both units, for the reader's file may be in either. */
export function lengthInBoth(length: number): string {
  return `${length.toFixed(1)} mm (${(length / 25.4).toFixed(2)} in)`;
}
