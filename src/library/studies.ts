/**
 * `wellsweep/studies`: a truck put together, and all that can be asked of it. Millimeters and radians in vehicle axes
 * (X forward, Y left, Z up) unless a name says otherwise.
 */

export { GAP, GAP_ROW, partGapTo } from "../gaps/partGap.ts";
export { type PartInput, type PartShape, partShapeOf } from "../gaps/partShape.ts";
export { type RingShape, ringShapeOf } from "../gaps/ring/ringShape.ts";
export { type TireInput, type TireRing, tireRing, type WheelInput } from "../gaps/tire/tireOf.ts";
export { type AirBalance, type AirEquilibrium, airEquilibrium } from "../studies/air/airEquilibrium.ts";
export { type AirReport, type AirStance, airOf } from "../studies/air/airOf.ts";
export { type AirState, airStateAt } from "../studies/air/airState.ts";
export {
  type AlignmentResult,
  alignTruck,
  type SideAlignment,
  type TruckAlignment,
} from "../studies/alignment/alignSide.ts";
export type { BothSides, BothSidesResult } from "../studies/alignment/bothSides.ts";
export { type ModelAsk, modelAsked } from "../studies/alignment/modelAsked.ts";
export { EFFORT, TRIM } from "../studies/change/changeField.ts";
export { type ChangeOptions, changeOf } from "../studies/change/changeOf.ts";
export type {
  AlsoMoves,
  ChangeReport,
  FoundChange,
  SetField,
  TriedField,
} from "../studies/change/changeTypes.ts";
export {
  type ChartDocument,
  type ChartHead,
  cellDocument,
  chartCsv,
  chartDocument,
  chartHead,
} from "../studies/chart/chartDocument.ts";
export { type ChartSearch, chartSearch } from "../studies/chart/chartSearch.ts";
export type { AxisAsk, AxisEntry, ChartAsk, ChartCell, VerdictCell } from "../studies/chart/chartTypes.ts";
export { readAxis, readAxisTable } from "../studies/chart/readAxis.ts";
export { type RollRow, rollCurve } from "../studies/curves/rollCurve.ts";
export { type ShockAt, shockAt } from "../studies/curves/shockAt.ts";
export {
  type SpringAt,
  type SuspensionRow,
  type SuspensionSide,
  suspensionRow,
} from "../studies/curves/suspensionRow.ts";
export { type WholeSweep, wholeSweep } from "../studies/curves/wholeSweep.ts";
export { type CutEnd, type CutList, type CutPiece, cutListOf } from "../studies/drawings/cutPieces.ts";
export { type DrawingAsk, type ShopDrawings, shopDrawings } from "../studies/drawings/shopDrawings.ts";
export type { ShopFile } from "../studies/drawings/shopFile.ts";
export { trimFiles } from "../studies/drawings/trimPattern.ts";
export {
  type Envelope,
  type EnvelopeOptions,
  type EnvelopeResult,
  envelopeOf,
} from "../studies/envelope/envelopeOf.ts";
export {
  type EnvelopeRange,
  stanceRange,
  straightRange,
  wholeRange,
} from "../studies/envelope/envelopeRange.ts";
export { type ContainmentProof, proveContainment } from "../studies/envelope/proveContainment.ts";
export { floorAt, type ScrubLine, scrubLine } from "../studies/floor/floorAt.ts";
export { type FloorReport, type FloorStance, floorReport } from "../studies/floor/floorReport.ts";
export type { RollCase } from "../studies/floor/rollCase.ts";
export { type RollCoverage, type RollStance, rollCoverage } from "../studies/floor/rollCoverage.ts";
export { type RollTravels, wheelTravelsInRoll } from "../studies/floor/wheelTravelsInRoll.ts";
export { type GeometryReport, geometryReport } from "../studies/geometry/geometryReport.ts";
export {
  type AsBuiltReport,
  type AsBuiltSide,
  type AsBuiltSides,
  asBuiltReport,
  asBuiltSides,
} from "../studies/jig/asBuiltReport.ts";
export { type AsBuiltTruck, type AsBuiltTruckResult, asBuiltTruck } from "../studies/jig/asBuiltTruck.ts";
export { type FittedKnuckle, fitKnuckle } from "../studies/jig/fitKnuckle.ts";
export { type BuiltKnuckle, jigReadingsOf } from "../studies/jig/jigReadings.ts";
export { type JigRow, type JigSheet, jigSheetOf } from "../studies/jig/jigSheet.ts";
export { knuckleSolid, type SolidBody } from "../studies/knuckleSolid/knuckleSolid.ts";
export { type JointCone, jointConesAt } from "../studies/limits/jointCones.ts";
export type { LimitBorder } from "../studies/limits/limitBorders.ts";
export { LimitStatus } from "../studies/limits/limitStatus.ts";
export {
  type LimitMargin,
  type LimitPose,
  type LimitStance,
  type LimitsReport,
  limitMargins,
  limitsOf,
} from "../studies/limits/limitsOf.ts";
export { type LimitOverRange, limitsOverRange, limitsPassed } from "../studies/limits/limitsPassed.ts";
export { type Carriers, carriersOf } from "../studies/loads/carriers.ts";
export {
  type LoadsAsk,
  type LoadsCase,
  type LoadsReport,
  loadsReport,
} from "../studies/loads/loadsReport.ts";
export {
  type Deflection,
  type Strength,
  type StrengthOf,
  type Stress,
  strengthOf,
} from "../studies/loads/strengthOf.ts";
export { type ClearanceMap, type MapOptions, type MapSide, mapOf } from "../studies/map/clearanceMap.ts";
export { type LowestTravels, lowestTravels } from "../studies/map/lowestTravels.ts";
export { type MapReport, mapReportOf } from "../studies/map/mapReport.ts";
export { type NoLimits, type SteerLimits, steerLimits } from "../studies/map/steerLimits.ts";
export type { Stop, WheelStops } from "../studies/map/stop.ts";
export { archFromPhoto, type LipOffset, type TracedArch } from "../studies/measure/archFromPhoto.ts";
export { type Ask, askDocument } from "../studies/measure/ask.ts";
export { type DocumentToMeasure, measureAskOf } from "../studies/measure/measureAskOf.ts";
export type {
  Measured,
  MeasuredPoint,
  MeasuredSize,
  NextReading,
  OpenWay,
  ReadingResidual,
  Standing,
  Suspect,
} from "../studies/measure/measured.ts";
export type { MeasureAsk } from "../studies/measure/measureProblem.ts";
export { measureTruck } from "../studies/measure/measureTruck.ts";
export {
  type KnownPixel,
  type PhotoPlane,
  type PhotoPlaneResult,
  photoPlane,
} from "../studies/measure/photoPlane.ts";
export {
  type MatchedPoint,
  type ScanPlacing,
  type ScanPlacingResult,
  scanOnPoints,
} from "../studies/measure/scanOnPoints.ts";
export { type StraightedgeWheel, wheelFromStraightedge } from "../studies/measure/sizeValues.ts";
export { TAPE_READINGS } from "../studies/measure/tapeReadings.ts";
export {
  type CaliperTire,
  type CaliperTireProfile,
  tireFromCalipers,
} from "../studies/measure/tireFromCalipers.ts";
export { type Model, type ModelResult, modelOf } from "../studies/model/model.ts";
export { type Pair, pairGapTo, pairMotion } from "../studies/model/pairs.ts";
export { Budget } from "../studies/numeric/budget.ts";
export type { OddsInput } from "../studies/odds/oddsInputs.ts";
export { type OddsOptions, type OddsReport, oddsOf } from "../studies/odds/oddsOf.ts";
export type { Matter } from "../studies/odds/whatMatters.ts";
export { type OrderSheet, orderSheet } from "../studies/order/orderSheet.ts";
export { writeOrder } from "../studies/order/writeOrder.ts";
export {
  type CheckEntry,
  type CheckOptions,
  type CheckReport,
  checkClearance,
  DEFAULT_TOLERANCE,
  type Verdict,
} from "../studies/reports/check.ts";
export { type GapEntry, gapsAt } from "../studies/reports/gapsAt.ts";
export { type ReachLimit, reachLimits } from "../studies/reports/reachLimits.ts";
export {
  DEFAULT_SWEEP_ROWS,
  type ReachedRow,
  type Sweep,
  type SweepRow,
  type SweepSide,
  sweepOf,
  sweepRow,
  type UnreachedRow,
} from "../studies/reports/sweep.ts";
export { type EnvelopeSection, envelopeSection } from "../studies/section/envelopeSection.ts";
export type { SectionPlane } from "../studies/section/outline.ts";
export { type SolveOptions, solveOf } from "../studies/solve/solveOf.ts";
export type {
  GapBracket,
  PoseTarget,
  Solved,
  SolveReport,
  SolveTarget,
} from "../studies/solve/solveTypes.ts";
export type { FloorClearance, FloorPlane, FloorPose, FloorWheel } from "../studies/stances/floorPose.ts";
export { type StanceMeasures, stanceMeasures } from "../studies/stances/stanceMeasures.ts";
export { type TravelFound, travelForMeasure } from "../studies/stances/travelForMeasure.ts";
export { type TrimOptions, trimOf } from "../studies/trim/trimOf.ts";
export type { LeftPart, Trim, TrimRegion } from "../studies/trim/trimTypes.ts";
export type { TruckToVary } from "../studies/window/truckOverField.ts";
export { type WindowField, windowField } from "../studies/window/windowField.ts";
export { type WindowOptions, windowOf } from "../studies/window/windowOf.ts";
export type {
  Closer,
  FieldWindow,
  Fit,
  Opening,
  RangeEnd,
  SetBy,
  TooNear,
} from "../studies/window/windowTypes.ts";
export { applyReadings } from "../studies/worksheet/applyReadings.ts";
export type { Alignment } from "../suspension/alignment.ts";
export { armAngleFor, travelStatus } from "../suspension/armAngle.ts";
export {
  type Assembled,
  type AssemblyIssue,
  assembleFrontEnd,
  type FrontEnd,
  type Side,
  type SideModel,
} from "../suspension/frontEnd.ts";
export type { FrontEndInput } from "../suspension/inputs.ts";
export { POSE, POSE_ROW, poseRowTo } from "../suspension/poseRow.ts";
export { jointOf, PoseStatus } from "../suspension/poseStatus.ts";
export {
  type ApartPose,
  type OutOfReach,
  type PoseResult,
  type SidePose,
  type SolvedPose,
  solveApart,
  solvePose,
} from "../suspension/solvePose.ts";
export { INNER_ENDS_ROW, type Steering } from "../suspension/steering.ts";
