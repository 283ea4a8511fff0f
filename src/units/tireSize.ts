/**
 * A tire size as written on the sidewall, in the notation's own units. Notation: ISO 4000-1 and ISO 4209-1
 * (metric) and the tire trade's flotation form; construction letters R radial, D or "-" diagonal, B belted bias.
 */
export type TireConstruction = "radial" | "diagonal" | "belted bias";

/** P235/70R15: nominal width in mm, height as a share of it. */
export interface MetricTireSize {
  readonly kind: "metric";
  /** P passenger, LT light truck, ST trailer, T temporary spare; null = none written. */
  readonly service: "P" | "LT" | "ST" | "T" | null;
  readonly nominalWidthMm: number;
  /** Section height in percent of the nominal width. */
  readonly aspectPercent: number;
  readonly construction: TireConstruction;
  /** Nominal rim diameter code; 15 fits a 15 in rim. */
  readonly rimCode: number;
}

/** 31x10.50R15LT: nominal overall diameter and section width in inches. */
export interface FlotationTireSize {
  readonly kind: "flotation";
  readonly service: "LT" | null;
  readonly nominalDiameterInches: number;
  readonly nominalWidthInches: number;
  readonly construction: TireConstruction;
  /** Nominal rim diameter code; 15 fits a 15 in rim. */
  readonly rimCode: number;
}

export type TireSize = MetricTireSize | FlotationTireSize;

/** What `parseTireSize` reads, said to a person who wrote something else. */
export const describeTireSizeForms =
  "write the size as on the sidewall: P235/70R15, LT245/75R16, 235/70R15 or 31x10.50R15LT";

/** No size with its markings is longer; keeps a pasted page out of the patterns. */
const MAX_LENGTH = 80;

const CONSTRUCTION = "(?<construction>[SHVZ]?R|D|B|-)";
const RIM_CODE = String.raw`(?<rimCode>\d{2}(?:\.5)?)`;
// Load index and speed symbol, load range, ply rating and sidewall letters change no dimension: read over.
const LOAD_RANGE = String.raw`(?:\s*/\s*[B-N])?`;
const SERVICE_DESCRIPTION = String.raw`(?:(?:\s+|\s*\(\s*)\d{2,3}(?:\s*/\s*\d{2,3})?\s*[A-Z]\d?\s*\)?)?`;
// Letters of extra load are also written right behind the rim code; a load index there would run into it.
const EXTRA_LOAD = String.raw`(?:\s*(?:XL|SL|LL|RF|EXTRA\s+LOAD|REINFORCED))`;
const MARKING = String.raw`(?:\s+(?:M\s?\+\s?S|TL|TT|TUBELESS|\d{1,2}\s?PR|LR\s?[B-N]|LOAD RANGE [B-N]|[B-N]|OWL|RWL|BSW|WSW))`;
const MARKINGS = `(?:${EXTRA_LOAD}|${MARKING})*`;
const TAIL = `${LOAD_RANGE}${MARKINGS}${SERVICE_DESCRIPTION}${LOAD_RANGE}${MARKINGS}`;

const METRIC = new RegExp(
  String.raw`^(?<service>P|LT|ST|T)?\s*(?<width>\d{3})\s*/\s*(?<aspect>\d{2,3})\s*${CONSTRUCTION}\s*${RIM_CODE}\s*(?<suffix>LT|ST|C)?${TAIL}$`,
);
const FLOTATION = new RegExp(
  String.raw`^(?<service>LT)?\s*(?<diameter>\d{2}(?:\.\d{1,2})?)\s*X\s*(?<width>\d{1,2}(?:\.\d{1,2})?)\s*${CONSTRUCTION}\s*${RIM_CODE}\s*(?<suffix>LT)?${TAIL}$`,
);

function constructionOf(letters: string): TireConstruction {
  if (letters.endsWith("R")) return "radial";
  return letters === "B" ? "belted bias" : "diagonal";
}

const within = (value: number, low: number, high: number): boolean => value >= low && value <= high;

function metricSize(groups: Record<string, string | undefined>): MetricTireSize | null {
  const nominalWidthMm = Number(groups.width);
  const aspectPercent = Number(groups.aspect);
  const rimCode = Number(groups.rimCode);
  // Wider than anything made for cars and light trucks; outside it a digit was mistyped.
  if (!within(nominalWidthMm, 105, 475)) return null;
  if (!within(aspectPercent, 20, 105) || !within(rimCode, 10, 32)) return null;
  const suffix = groups.suffix === "C" ? undefined : groups.suffix;
  const service = (groups.service ?? suffix ?? null) as MetricTireSize["service"];
  const construction = constructionOf(groups.construction ?? "R");
  return { kind: "metric", service, nominalWidthMm, aspectPercent, construction, rimCode };
}

function flotationSize(groups: Record<string, string | undefined>): FlotationTireSize | null {
  const nominalDiameterInches = Number(groups.diameter);
  const nominalWidthInches = Number(groups.width);
  const rimCode = Number(groups.rimCode);
  if (!within(nominalDiameterInches, 18, 60) || !within(nominalWidthInches, 4, 24)) return null;
  // A tire stands out past its rim by at least its bead and flange.
  if (!within(rimCode, 8, 32) || nominalDiameterInches < rimCode + 3) return null;
  const service = (groups.service ?? groups.suffix ?? null) as FlotationTireSize["service"];
  const construction = constructionOf(groups.construction ?? "R");
  return { kind: "flotation", service, nominalDiameterInches, nominalWidthInches, construction, rimCode };
}

/**
 * Reads a tire size in metric (`P235/70R15`, `235/70-15`) or flotation (`31x10.50R15LT`) notation, in either
 * case, spaces allowed between its parts, with or without a service description and markings after it
 * (`LT245/75R16 120/116S`, `LT245/75R16/E`, `235/75R15XL`), which are read over: they tell load and speed, and no
 * dimension (order of designation, marks and service description: ISO 4000-1 and TRA, from memory).
 * Null = not such a size, or no car or light-truck tire has it; letter series (`GR70-15`), numeric
 * (`7.50-16`) and millimeter rims are not read. `describeTireSizeForms` says what is.
 */
export function parseTireSize(text: string): TireSize | null {
  if (text.length > MAX_LENGTH) return null;
  const written = text
    .trim()
    .toUpperCase()
    .replaceAll("×", "X")
    .replaceAll(/[‐‑–]/g, "-")
    .replaceAll(",", ".");
  const metric = METRIC.exec(written)?.groups;
  if (metric) return metricSize(metric);
  const flotation = FLOTATION.exec(written)?.groups;
  return flotation ? flotationSize(flotation) : null;
}
