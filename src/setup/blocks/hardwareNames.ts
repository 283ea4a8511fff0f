import type { BlockReading } from "../reading/blockReading.ts";
import type { AirSpringSetup } from "../types/airTypes.ts";
import type { LimitsSetup } from "../types/limitsTypes.ts";
import type { HardwareSetup } from "../types/types.ts";

/** Names of what is measured of moving parts: with them answers and tables tell of it. */
export const HARDWARE_NAMES = [
  "upper arm",
  "lower arm",
  "tie rod",
  "tie rod end",
  "steering arm",
  "upper ball joint",
  "lower ball joint",
  "knuckle",
] as const;

export const ROTOR_NAMES = [
  "rotor to lower ball joint",
  "rotor to lower arm",
  "rotor to upper ball joint",
  "rotor to upper arm",
  "rotor to steering arm",
  "rotor to tie rod end",
  "rotor to tie rod",
] as const;

export const CALIPER_NAMES = ["caliper to barrel", "caliper to wheel center"] as const;

/** What an air spring and a shock with a diameter are called as moving parts. */
export const SPRING_OR_SHOCK_NAMES = { airSpring: "air spring", shock: "shock" } as const;

export type HardwareName = (typeof HARDWARE_NAMES | typeof ROTOR_NAMES | typeof CALIPER_NAMES)[number];

/**
 * Adds an issue for every body part that has the name of a moving part measured beside it. Entries whose shape is
 * wrong are passed over.
 */
export function refuseHardwareNames(
  body: readonly unknown[],
  { rotor, caliper }: HardwareSetup,
  reading: BlockReading,
): void {
  const taken = new Set<string>([
    ...HARDWARE_NAMES,
    ...(rotor ? ROTOR_NAMES : []),
    ...(caliper ? CALIPER_NAMES : []),
  ]);
  refuseNames(body, taken, "is what the hardware block calls a moving part; give it another name", reading);
}

/** The same for an air spring and a shock that are measured. */
export function refuseSpringOrShockNames(
  body: readonly unknown[],
  airSpring: AirSpringSetup | null,
  limits: LimitsSetup | null,
  reading: BlockReading,
): void {
  const taken = new Set<string>();
  if (airSpring !== null && airSpring.diameter !== null) taken.add(SPRING_OR_SHOCK_NAMES.airSpring);
  if (limits?.shock && limits.shock.diameter !== null) taken.add(SPRING_OR_SHOCK_NAMES.shock);
  refuseNames(body, taken, "is measured under that name already; give it another name", reading);
}

function refuseNames(
  body: readonly unknown[],
  taken: ReadonlySet<string>,
  mend: string,
  reading: BlockReading,
): void {
  body.forEach((part, i) => {
    const name = (part as { readonly name?: unknown } | null | undefined)?.name;
    if (typeof name === "string" && taken.has(name)) reading.issue([i, "name"], name, mend);
  });
}
