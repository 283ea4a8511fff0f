import { resolveAdjusters } from "./blocks/adjusters.ts";
import { resolveAirSpring } from "./blocks/airSpring.ts";
import { refuseUnknownStance, resolveAlignment } from "./blocks/alignment.ts";
import { resolveAsBuilt } from "./blocks/asBuilt.ts";
import { resolveBuild } from "./blocks/build.ts";
import { resolveConfirmed } from "./blocks/confirmed.ts";
import { resolveFloor, resolveMasses, resolveRoll } from "./blocks/floor.ts";
import { resolveHardware } from "./blocks/hardware.ts";
import { refuseHardwareNames, refuseSpringOrShockNames } from "./blocks/hardwareNames.ts";
import { resolveJig } from "./blocks/jig.ts";
import { resolveKnuckle } from "./blocks/knuckle.ts";
import { resolveLimits } from "./blocks/limits.ts";
import { resolveLoads } from "./blocks/loads.ts";
import { resolveOdds } from "./blocks/odds.ts";
import { resolveOrder } from "./blocks/order/order.ts";
import { resolvePoses } from "./blocks/poses.ts";
import { bodyNamesOf } from "./blocks/readings/readingPoint.ts";
import { resolveReadings } from "./blocks/readings/resolveReadings.ts";
import { refuseUnmeasurable, resolveStances } from "./blocks/stances.ts";
import { resolveTire } from "./blocks/tire.ts";
import { resolveTravel, resolveTruck } from "./blocks/truck.ts";
import { refuseRepeatedNames } from "./blocks/variants.ts";
import { resolveWheel } from "./blocks/wheel.ts";
import { type SetupDocument, setupDocument } from "./document.ts";
import { exampleFields, exampleOf, isExampleAsItCame, placesSaidMine } from "./exampleMarks.ts";
import { BlockReading, type LoadedMeshes } from "./reading/blockReading.ts";
import type { IssueList } from "./reading/issueList.ts";
import { addShapeIssues } from "./shapeIssues.ts";
import { takeWithin } from "./takeWithin.ts";
import { DEFAULT_ALLOWANCE, DEFAULT_NAME } from "./types/defaults.ts";
import { KnownParts } from "./types/knownParts.ts";
import type { Setup } from "./types/types.ts";

/** A setup without the part variants play. */
export type ResolvedDocument = Omit<Setup, "variant" | "variantNames">;

/**
 * Turns one document, as it stands, into millimeters and radians; its variants are only checked for shape and
 * names. Looks at every block that has a sound shape, whatever is wrong in others. Null = there are issues.
 * @param known body parts read before; the sound parts read now are added
 * @param isLike it is one that was read before, but for numbers within the ends of their fields: its shape is not looked at
 */
export function resolveDocument(
  document: unknown,
  issues: IssueList,
  meshes: LoadedMeshes,
  known = new KnownParts(),
  isLike = false,
): ResolvedDocument | null {
  const { document: plain, within } = takeWithin(document, issues, known);
  const shape = isLike ? null : setupDocument.safeParse(known.withStandIns(plain));
  if (shape?.success === false) addShapeIssues(issues, document, shape.error);
  if (typeof plain !== "object" || plain === null) return null;

  const typed = plain as SetupDocument; // true of each block that `isSound`
  if (Array.isArray(typed.variants))
    refuseRepeatedNames(typed.variants, new BlockReading("mm", meshes, issues, ["variants"]));
  if (issues.touches(["units"])) return null; // no length means anything

  const reading = new BlockReading(typed.units, meshes, issues, [], known);
  const hasTruck = typeof typed.truck === "object" && typed.truck !== null;
  const truck = hasTruck ? resolveTruck(typed.truck, reading.inside("truck")) : null;
  const knuckle = reading.isSound("knuckle")
    ? resolveKnuckle(typed.knuckle, reading.inside("knuckle"))
    : null;
  const build = reading.isSound("build")
    ? resolveBuild(typed.build, reading.inside("build"), reading.isSound("knuckle") ? knuckle : null)
    : null;
  const wheel = reading.isSound("wheel") ? resolveWheel(typed.wheel, reading.inside("wheel")) : null;
  const soundWheel = reading.isSound("wheel") ? wheel : null;
  const tire = reading.isSound("tire") ? resolveTire(typed.tire, reading.inside("tire"), soundWheel) : null;
  const hardware = reading.isSound("hardware")
    ? resolveHardware(typed.hardware, reading.inside("hardware"))
    : null;
  if (hardware && truck && Array.isArray(typed.truck.body))
    refuseHardwareNames(typed.truck.body, hardware, reading.inside("truck", "body"));
  const alignment = reading.isSound("alignment")
    ? resolveAlignment(typed.alignment, reading.inside("alignment"))
    : null;
  const travel = reading.isSound("travel") ? resolveTravel(typed.travel, reading.inside("travel")) : null;
  const { stances, measuredStances } = Array.isArray(typed.stances)
    ? resolveStances(typed.stances, reading.inside("stances"))
    : { stances: [], measuredStances: [] };
  const poses = Array.isArray(typed.poses)
    ? resolvePoses(typed.poses, typed.stances, reading.inside("poses"))
    : [];
  const targets = reading.isSound("stances") ? alignment?.targets : null;
  if (targets) {
    const names = [...stances, ...measuredStances].map(({ name }) => name);
    refuseUnknownStance(targets, names, reading.inside("alignment"));
  }
  const adjusters = reading.isSound("adjusters")
    ? resolveAdjusters(typed.adjusters, reading.inside("adjusters"))
    : null;
  const limits = reading.isSound("limits")
    ? resolveLimits(typed.limits, reading.inside("limits"), truck?.steering.type)
    : null;
  const airSpring = reading.isSound("airSpring")
    ? resolveAirSpring(typed.airSpring, reading.inside("airSpring"))
    : null;
  if (truck && Array.isArray(typed.truck.body))
    refuseSpringOrShockNames(typed.truck.body, airSpring, limits, reading.inside("truck", "body"));
  const masses = reading.isSound("masses") ? resolveMasses(typed.masses, reading.inside("masses")) : null;
  const loads = reading.isSound("loads") ? resolveLoads(typed.loads, reading.inside("loads"), limits) : null;
  const roll = reading.isSound("roll") ? resolveRoll(typed.roll, reading.inside("roll")) : null;
  const hasWheelbase = truck === null || truck.wheelbase !== null; // a truck that is not there is told already
  const floor = reading.isSound("floor")
    ? resolveFloor(typed.floor, reading.inside("floor"), hasWheelbase)
    : null;
  const things = { airSpring: airSpring !== null, lip: !!floor?.lip, frame: !!floor?.frame };
  if (reading.isSound("airSpring") && reading.isSound("floor"))
    refuseUnmeasurable(measuredStances, things, reading.inside("stances"));
  const order = reading.isSound("order") ? resolveOrder(typed.order, reading.inside("order")) : null;
  const allowance = reading.isSound("allowance")
    ? reading.lengthOr(DEFAULT_ALLOWANCE, typed.allowance, "allowance")
    : DEFAULT_ALLOWANCE;
  const jig = reading.isSound("jig") ? resolveJig(typed.jig, reading.inside("jig")) : null;
  const asBuilt = reading.isSound("asBuilt")
    ? resolveAsBuilt(typed.asBuilt, jig, reading.inside("asBuilt"))
    : null;
  const impossible = issues.another();
  const readings = Array.isArray(typed.readings)
    ? resolveReadings(
        typed.readings,
        bodyNamesOf(typed),
        reading.inside("readings"),
        new BlockReading(typed.units, meshes, impossible, ["readings"]),
      )
    : [];
  const odds = reading.isSound("odds") ? resolveOdds(typed.odds, reading.inside("odds")) : null;
  const confirmed = Array.isArray(typed.confirmed)
    ? resolveConfirmed(typed.confirmed, reading.inside("confirmed"))
    : [];
  if (!issues.isEmpty || !truck || !knuckle || !wheel || !tire || !alignment || !travel || !jig || !odds)
    return null;
  const name = typed.name ?? DEFAULT_NAME;
  const fields = exampleFields(typed);
  const mine = placesSaidMine(typed);
  const isAsItCame = isExampleAsItCame(typed);
  const fromExample =
    fields.length === 0 ? null : { of: exampleOf(typed) ?? "", fields, isAsItCame, mine, mineInAll: mine };
  const { units } = typed;
  return {
    name,
    units,
    truck,
    knuckle,
    build,
    wheel,
    tire,
    hardware,
    alignment,
    adjusters,
    limits,
    airSpring,
    masses,
    loads,
    travel,
    stances,
    measuredStances,
    poses,
    roll,
    floor,
    order,
    allowance,
    jig,
    asBuilt,
    readings,
    readingsLeftOut: impossible.all(),
    fromExample,
    confirmed,
    odds,
    within,
  };
}

/** What was resolved of a document with a variant applied, with what is said mine in the document without it. */
export function withBaseMarks(resolved: ResolvedDocument, base: unknown): ResolvedDocument {
  const { fromExample } = resolved;
  return fromExample
    ? { ...resolved, fromExample: { ...fromExample, mineInAll: placesSaidMine(base) } }
    : resolved;
}
