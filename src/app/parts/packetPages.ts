import { ASSUMED_LAYOUT } from "../../setup/worksheet/assumedLayout.ts";
import { type PacketPageName, packetContents, pageTitle } from "../../studies/wording/packetTexts.ts";
import type { Truck } from "../state/truck.ts";
import { tellsWithin } from "./odds/OddsLine.tsx";

/** Whether a truck has readings, or numbers that stand for readings not taken yet. */
export function hasReadings({ setup }: Truck): boolean {
  return setup.readings.length > 0 || setup.fromExample?.of === ASSUMED_LAYOUT;
}

/** Whether a truck has limits to tell. */
export function isLimited({ setup }: Truck): boolean {
  return setup.limits !== null || setup.airSpring !== null;
}

/** The pages there are of a truck: what its setup says nothing of has none. */
export function pagesOf(truck: Truck, isChosen: boolean): readonly PacketPageName[] {
  const { setup, bolted } = truck;
  const has: Readonly<Record<PacketPageName, boolean>> = {
    sheet: true,
    aligning: bolted.setup.alignment.targets !== null,
    limits: isLimited(truck),
    air: setup.airSpring !== null,
    floor: true,
    map: true,
    readings: hasReadings(truck),
    choose: isChosen,
  };
  return (Object.keys(has) as PacketPageName[]).filter((page) => has[page]);
}

/** What a truck's packet has in it when it is opened, where odds and changes are worked out for it. */
export function contentsOf(truck: Truck): string {
  const titles = pagesOf(truck, true).map((page) =>
    pageTitle(page, { hasOdds: tellsWithin(truck), hasChanges: true }),
  );
  return packetContents(titles);
}
