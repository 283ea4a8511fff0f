import "./curveDock.css";
import { memo, type ReactNode, useEffect, useLayoutEffect, useRef, useState } from "react";
import { usePageMark } from "../../parts/usePageMark.ts";
import type { Truck } from "../../state/truck.ts";
import { followKeys } from "../../state/typing.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { useLaid } from "./laidOver.ts";
import { LayOver, SteeringScale, WhichPlots } from "./PlotMenus.tsx";
import { PlotTile } from "./PlotTile.tsx";
import { choosePlots, usePlotChoice } from "./plotChoice.ts";
import { plotNames } from "./plotSpecs.ts";

export type CurveDockProps = {
  truck: Truck;
  /** What curves out of sight are of: that truck, or the one before it while fields change. */
  rested: Truck;
  isOpen: boolean;
  /** The answer in few words, where it is out of sight while fields change. */
  children: ReactNode;
};

/** Scrolls on to what is cut off; from the end back to the first. */
function goOn(box: HTMLElement): void {
  const isAtEnd = box.scrollLeft + box.clientWidth >= box.scrollWidth - 4;
  box.scrollTo({ left: isAtEnd ? 0 : box.scrollLeft + box.clientWidth });
}

/** Names of the plots of which less than half is seen. */
function outOfSight(box: HTMLElement, titles: readonly string[]): readonly string[] {
  const seen = box.getBoundingClientRect();
  const tiles = [...box.querySelectorAll(".plot-tile")];
  return titles.filter((_, i) => {
    const tile = tiles[i]?.getBoundingClientRect();
    if (tile === undefined) return false;
    return Math.min(tile.right, seen.right) - Math.max(tile.left, seen.left) < 0.5 * tile.width;
  });
}

/** Any plots, along the foot of the window: they stay in view while fields change, and follow. */
export const CurveDock = memo(function CurveDock({ truck, rested, isOpen, children }: CurveDockProps) {
  usePageMark("dock", isOpen ? "open" : "closed");
  const format = useFormat();
  const laid = useLaid(truck);
  const laidRested = useLaid(rested);
  const docked = usePlotChoice((s) => s.docked);
  const scale = usePlotChoice((s) => s.scale);
  const names = plotNames(truck);
  const shown = docked.flatMap((id) => names.find((one) => one.id === id) ?? []);
  const plots = useRef<HTMLDivElement>(null);
  const [hasMore, setMore] = useState(false);
  const [next, setNext] = useState("");
  const count = isOpen ? shown.length : 0;
  useEffect(() => {
    followKeys(isOpen);
    return () => followKeys(false);
  }, [isOpen]);
  useLayoutEffect(() => {
    const box = plots.current;
    if (box === null || count === 0) return setMore(false);
    const observer = new ResizeObserver(() => setMore(box.scrollWidth > box.clientWidth + 4));
    observer.observe(box);
    return () => observer.disconnect();
  }, [count]);
  const last = useRef(shown.length);
  useLayoutEffect(() => {
    // What is chosen is seen: it stands last. Opened, the dock begins with the first.
    if (last.current > 0 && count > last.current)
      plots.current?.scrollTo({ left: plots.current.scrollWidth });
    last.current = count;
  }, [count]);
  const titles = shown.map(({ title }) => title).join("\n");
  useLayoutEffect(() => {
    const box = plots.current;
    if (box === null || !hasMore) return;
    const tell = () => setNext(outOfSight(box, titles.split("\n")).join(", "));
    tell();
    box.addEventListener("scroll", tell, { passive: true });
    return () => box.removeEventListener("scroll", tell);
  }, [hasMore, titles]);
  return (
    <section className="curve-dock" aria-label="Curves beside the fields">
      <div className="curve-dock-bar">
        <button
          type="button"
          className="button"
          aria-expanded={isOpen}
          onClick={() => choosePlots({ isDockOpen: !isOpen })}
        >
          {isOpen ? "▾" : "▴"} Curves
        </button>
        {isOpen && (
          <>
            <WhichPlots truck={truck} of="dock" />
            <LayOver laid={laid} />
            <SteeringScale />
          </>
        )}
        {children}
      </div>
      {isOpen && (
        <div ref={plots} className="curve-dock-plots" data-more={hasMore || undefined}>
          {shown.length === 0 && <p>No curve is chosen: choose some under “Which curves”.</p>}
          {shown.map(({ id }) => (
            <PlotTile key={id} id={id} laid={laid} rested={laidRested} scale={scale} format={format} isLow />
          ))}
        </div>
      )}
      {isOpen && hasMore && (
        <button
          type="button"
          className="button curve-dock-more"
          aria-label={`More curves: ${next}`}
          title={`More curves: ${next}`}
          onClick={() => goOn(plots.current!)}
        >
          ▸
        </button>
      )}
    </section>
  );
});
