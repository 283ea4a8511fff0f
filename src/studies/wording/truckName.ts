/** What the setup itself is called beside its variants. */
const CURRENT_TRUCK = "current truck";

/** What a truck is called where a setup and its variants are told of. @param variant null = the setup without one */
export function truckName(variant: string | null): string {
  return variant ?? CURRENT_TRUCK;
}
