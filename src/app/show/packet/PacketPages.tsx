import "../sheet/customerSheet.css";
import "./packet.css";
import "../../clear/map/mapPanel.css";
import { type ReactNode, useEffect } from "react";
import type { AirSpringSetup } from "../../../setup/types/airTypes.ts";
import { airSeat } from "../../../studies/air/airSeat.ts";
import { airStateAt } from "../../../studies/air/airState.ts";
import { allowedSentence } from "../../../studies/wording/airWords.ts";
import { AIR_CAUTIONS } from "../../../studies/wording/cautions.ts";
import {
  coverLine,
  PACKET_PAGES,
  type PacketPageName,
  pageHeading,
  pageTitle,
  STILL_WORKING,
} from "../../../studies/wording/packetTexts.ts";
import { AligningPanel } from "../../choose/aligning/AligningPanel.tsx";
import { useChanges, useChosen } from "../../choose/change/useChanges.ts";
import { type AirRow, AirTable } from "../../clear/air/AirTable.tsx";
import { MapKey } from "../../clear/map/MapKey.tsx";
import { MapPicture } from "../../clear/map/MapPicture.tsx";
import { MapScales } from "../../clear/map/MapScales.tsx";
import { MapHatches, MapWorst } from "../../clear/map/MapWorst.tsx";
import { MAP_BOX, mapFrameOf } from "../../clear/map/mapFrame.ts";
import { tellsWithin, useOdds } from "../../parts/odds/OddsLine.tsx";
import { hasReadings, isLimited, pagesOf } from "../../parts/packetPages.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import type { Answered } from "../../work/answerCache.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { toldOf } from "../counter/comparisonSentences.ts";
import { type Comparison, nameWords, useComparison } from "../counter/useComparison.ts";
import { SheetPage } from "../sheet/SheetPage.tsx";
import { useSheetFields } from "../shop/useSheetFields.ts";
import { ChoosePage } from "./ChoosePage.tsx";
import { FloorPage } from "./FloorPage.tsx";
import { LimitsPage } from "./LimitsPage.tsx";
import { ReadingsPage } from "./ReadingsPage.tsx";

export type PacketPagesProps = {
  truck: Truck;
  /** Told once every page has its answer. */
  onReady?: () => void;
  /** What to change is looked for too, a long search. Default false: it is told where somebody had it looked for. */
  isWhole?: boolean;
};

/** Everything of a truck that is handed over on paper, a page each, with nothing on it that is a control. */
export function PacketPages({ truck, onReady, isWhole = false }: PacketPagesProps) {
  const { setup } = truck;
  const comparison = useComparison();
  const { shop } = useSheetFields();
  const limits = useAnswer("limits", isLimited(truck) ? truck : null);
  const map = useAnswer("map", truck);
  // What the odds are is told at the counter too where numbers tell how well they are known.
  const odds = useOdds(truck, tellsWithin(truck));
  const changes = useChanges(truck, isWhole);
  const chosen = useChosen();
  const isWaitedFor = [
    ...[limits, map],
    ...(tellsWithin(truck) ? [odds.answered] : []),
    ...(isWhole ? [changes.answered] : []),
  ];
  const isReady =
    comparison !== null &&
    toldOf(comparison).every(({ answer }) => answer.report !== null || answer.failure !== null) &&
    isWaitedFor.every((one) => one === null || one.answer !== null || one.failure !== null);
  useEffect(() => {
    if (isReady) onReady?.();
  }, [isReady, onReady]);
  const name = truckTitle(truck, comparison);
  const isChosen =
    isWhole ||
    tellsWithin(truck) ||
    chosen !== null ||
    odds.answered?.answer != null ||
    changes.answered.answer !== null;
  const pages = pagesOf(truck, isChosen);
  const toldChoices = {
    hasOdds: tellsWithin(truck) || odds.answered?.answer != null,
    hasChanges: isWhole || chosen !== null || changes.answered.answer !== null,
  };
  const titleOf = (page: PacketPageName) => pageTitle(page, toldChoices);
  const date = new Date().toLocaleDateString("en-US", { dateStyle: "long" });
  return (
    <div className="packet" data-ready={isReady || undefined}>
      <section className="packet-page packet-sheet" aria-label="Customer sheet">
        <p className="packet-cover">{coverLine(shop, name, date, pages.map(titleOf))}</p>
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
      {hasReadings(truck) && (
        <PacketPage page="readings" truck={name}>
          <ReadingsPage truck={truck} />
        </PacketPage>
      )}
      {isChosen && (
        <PacketPage page="choose" title={titleOf("choose")} truck={name}>
          <ChoosePage
            isWhole={isWhole}
            odds={odds}
            isToldOdds={tellsWithin(truck)}
            changes={changes}
            chosen={chosen}
          />
        </PacketPage>
      )}
    </div>
  );
}

function truckTitle({ setup }: Truck, comparison: Comparison | null): string {
  const name = comparison ? nameWords(comparison) : setup.name;
  return setup.variant === null ? name : `${name}, ${setup.variant}`;
}

/** The left air spring at each stance. */
function AirPage({ truck: { setup, model }, spring }: { truck: Truck; spring: AirSpringSetup }) {
  const format = useFormat();
  const heights = setup.stances.length > 0 ? setup.stances : [{ name: "as measured", travel: 0 }];
  const seat = airSeat(model, "left");
  const rows: AirRow[] = heights.map(({ name, travel }) => ({
    name,
    travel: null,
    state: airStateAt(model, "left", travel),
  }));
  rows.push({ name: "Bags empty", travel: null, state: airStateAt(model, "left", seat.travel), seat });
  return (
    <>
      <AirTable
        caption="Air spring at each stance, left side"
        rows={rows}
        spring={spring}
        setup={setup}
        format={format}
        units={setup.units}
      />
      <p>{allowedSentence(spring, setup.units, format)}</p>
      <p className="packet-caution">{AIR_CAUTIONS}</p>
    </>
  );
}

/** The map of the worse wheel, to be looked at. */
function MapPage({ truck, map }: { truck: Truck; map: Answered<"map"> }) {
  const format = useFormat();
  const { setup } = truck;
  const drawn = map.answer;
  if (drawn === null) return <p>{map.failure ?? STILL_WORKING}</p>;
  const frame = mapFrameOf(setup.travel.droop, setup.travel.bump);
  return (
    <>
      <p>Every height against every steering angle, the worse wheel of the two.</p>
      <svg
        className="packet-map"
        viewBox={`0 0 ${MAP_BOX.width} ${MAP_BOX.height}`}
        role="img"
        aria-label="Map of height and steering"
      >
        <MapHatches />
        <MapPicture drawn={drawn} side="both" frame={frame} allowance={setup.allowance} />
        <MapScales setup={setup} frame={frame} format={format} />
        <MapWorst truck={truck} frame={frame} side="both" />
      </svg>
      <MapKey truck={truck} drawn={drawn} />
    </>
  );
}

type PacketPageProps = {
  page: PacketPageName;
  /** What stands over it. Default what the page is called. */
  title?: string;
  /** The truck it is of. */
  truck: string;
  children: ReactNode;
};

/** One page of the packet, with what it is and of which truck at its head. */
function PacketPage({ page, title = PACKET_PAGES[page], truck, children }: PacketPageProps) {
  const heading = pageHeading(title);
  return (
    <section className={`packet-page packet-${page}`} aria-label={heading}>
      <header className="packet-head">
        <h2>{heading}</h2>
        <p>{truck}</p>
      </header>
      {children}
    </section>
  );
}
