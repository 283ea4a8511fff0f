import "../sheet/customerSheet.css";
import "./packet.css";
import { useEffect } from "react";
import { coverLine, type PacketPageName } from "../../../studies/wording/packetTexts.ts";
import { AligningPanel } from "../../choose/aligning/AligningPanel.tsx";
import type { Truck } from "../../state/truck.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { toldOf } from "../counter/comparisonSentences.ts";
import { type Comparison, nameWords, useComparison } from "../counter/useComparison.ts";
import { SheetPage } from "../sheet/SheetPage.tsx";
import { useSheetFields } from "../sheet/useSheetFields.ts";
import { AirPage } from "./AirPage.tsx";
import { FloorPage } from "./FloorPage.tsx";
import { LimitsPage } from "./LimitsPage.tsx";
import { MapPage } from "./MapPage.tsx";
import { PacketPage } from "./PacketPage.tsx";

export type PacketPagesProps = {
  truck: Truck;
  /** Told once every page has its answer. */
  onReady?: () => void;
};

/** Everything of a truck that is handed over on paper, a page each, with nothing on it that is a control. */
export function PacketPages({ truck, onReady }: PacketPagesProps) {
  const { setup } = truck;
  const comparison = useComparison();
  const { shop } = useSheetFields();
  const limits = useAnswer("limits", isLimited(truck) ? truck : null);
  const map = useAnswer("map", truck);
  const isReady =
    comparison !== null &&
    toldOf(comparison).every(({ answer }) => answer.report !== null || answer.failure !== null) &&
    [limits, map].every((one) => one === null || one.answer !== null || one.failure !== null);
  useEffect(() => {
    if (isReady) onReady?.();
  }, [isReady, onReady]);
  const name = truckTitle(truck, comparison);
  const pages = pagesOf(truck);
  const date = new Date().toLocaleDateString("en-US", { dateStyle: "long" });
  return (
    <div className="packet" data-ready={isReady || undefined}>
      <section className="packet-page packet-sheet" aria-label="Customer sheet">
        <p className="packet-cover">{coverLine(shop, name, date, pages)}</p>
        {comparison && <SheetPage comparison={comparison} />}
      </section>
      {pages.includes("aligning") && (
        <PacketPage page="aligning" truck={name}>
          <AligningPanel truck={truck} />
        </PacketPage>
      )}
      {limits && (
        <PacketPage page="limits" truck={name}>
          <LimitsPage truck={truck} limits={limits} />
        </PacketPage>
      )}
      {setup.airSpring && (
        <PacketPage page="air" truck={name}>
          <AirPage truck={truck} spring={setup.airSpring} />
        </PacketPage>
      )}
      <PacketPage page="floor" truck={name}>
        <FloorPage truck={truck} />
      </PacketPage>
      {map && (
        <PacketPage page="map" truck={name}>
          <MapPage truck={truck} map={map} />
        </PacketPage>
      )}
    </div>
  );
}

function isLimited({ setup }: Truck): boolean {
  return setup.limits !== null || setup.airSpring !== null;
}

/** The pages there are of a truck: what its setup says nothing of has none. */
function pagesOf(truck: Truck): readonly PacketPageName[] {
  const { setup, bolted } = truck;
  const has: Readonly<Record<PacketPageName, boolean>> = {
    sheet: true,
    aligning: bolted.setup.alignment.targets !== null,
    limits: isLimited(truck),
    air: setup.airSpring !== null,
    floor: true,
    map: true,
  };
  return (Object.keys(has) as PacketPageName[]).filter((page) => has[page]);
}

function truckTitle({ setup }: Truck, comparison: Comparison | null): string {
  const name = comparison ? nameWords(comparison) : setup.name;
  return setup.variant === null ? name : `${name}, ${setup.variant}`;
}
