/**
 * `wellsweep/setup`: setups as text and as data, and the notations they are written in. A setup read holds millimeters
 * and radians in vehicle axes (X forward, Y left, Z up) unless a name says otherwise.
 */

export { type CatalogItem, type Catalogs, NO_CATALOGS, readCatalog } from "../setup/catalogs/readCatalog.ts";
export { type Material, readMaterials } from "../setup/catalogs/readMaterials.ts";
export { setupJsonSchema } from "../setup/documentText.ts";
export type { LoadedMesh, LoadedMeshes, RefusedMesh } from "../setup/reading/blockReading.ts";
export { formatIssue } from "../setup/reading/issueList.ts";
export { type ReadReadings, readReadings } from "../setup/readReadings.ts";
export { type ReadSetup, readSetup } from "../setup/readSetup.ts";
export { resolveSetup } from "../setup/resolveSetup.ts";
export type { PointName, Reading, ReadingSide, ReadingSize } from "../setup/types/readingTypes.ts";
export type { BodyPart } from "../setup/types/truckTypes.ts";
export type { Result, Setup, SetupIssue } from "../setup/types/types.ts";
export type { NumberWithin } from "../setup/types/withinTypes.ts";
export { degFromRad, formatAngle, type ParsedAngle, parseAngle, radFromDeg } from "../units/angle.ts";
export { type BoltPattern, boltPatternText, holeDistance, parseBoltPattern } from "../units/boltPattern.ts";
export { formatLength, type LengthFormat } from "../units/formatLength.ts";
export { type FileUnits, mmFromUnits, unitsFromMm } from "../units/lengthUnits.ts";
export { type ParsedLength, parseLength } from "../units/parseLength.ts";
export { parseTaper } from "../units/taper.ts";
export { parseThread, type ThreadCallout, threadText } from "../units/threadCallout.ts";
export { parseTireSize, type TireSize } from "../units/tireSize.ts";
