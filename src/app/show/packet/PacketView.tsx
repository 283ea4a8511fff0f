import { type CSSProperties, useCallback, useEffect, useRef, useState } from "react";
import { CloseButton, LayerDialog } from "../../parts/LayerDialog.tsx";
import { contentsOf } from "../../parts/packetPages.ts";
import { useWidth } from "../../parts/useSize.ts";
import type { Truck } from "../../state/truck.ts";
import { PacketPages } from "./PacketPages.tsx";
import { takePrintWish } from "./printWish.ts";

/** px: a sheet of paper with its margins, 186 + 24 mm and its edges, as `packet.css` lays it out. */
const PAPER = (210 / 25.4) * 96 + 2;

/** px beside the paper, on a narrow window. */
const ROOM = 16;

/** The packet as it will be printed; asked for by Ctrl+P it prints as soon as all of it is worked out. */
export function PacketView({ truck }: { truck: Truck }) {
  const [isReady, setReady] = useState(false);
  const isWished = useRef(false);
  // Who pressed Ctrl+P waits for the print: what to change, a long search, is told then where it is known. null = not known yet.
  const [isWhole, setWhole] = useState<boolean | null>(null);
  useEffect(() => {
    isWished.current = takePrintWish() || isWished.current;
    setWhole(!isWished.current);
  }, []);
  const preview = useRef<HTMLDivElement>(null);
  const width = useWidth(preview, PAPER + ROOM);
  const ready = useCallback(() => setReady(true), []);
  useEffect(() => {
    if (!isReady || !isWished.current) return;
    isWished.current = false;
    // After the page is laid out with the last answer.
    const frame = requestAnimationFrame(() => window.print());
    return () => cancelAnimationFrame(frame);
  }, [isReady]);
  return (
    <LayerDialog name="packet" labelledBy="packet-title">
      <header className="layer-head">
        <h2 id="packet-title" className="layer-title">
          Print packet <small>{contentsOf(truck)}; Letter or A4</small>
        </h2>
        <span role="status">{isReady ? "" : "Working out every page…"}</span>
        <button type="button" className="button sheet-print" onClick={() => window.print()}>
          {isReady ? "Print" : "Print as it is"}
        </button>
        <CloseButton name="packet" />
      </header>
      {/* Paper is no narrower on a phone: it is seen whole, smaller, as it will come out of the printer. */}
      <div
        ref={preview}
        className="packet-preview"
        style={{ "--paper-scale": Math.min(1, (width - ROOM) / PAPER) } as CSSProperties}
      >
        {isWhole !== null && <PacketPages truck={truck} onReady={ready} isWhole={isWhole} />}
      </div>
    </LayerDialog>
  );
}
