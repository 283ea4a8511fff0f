import { type ComponentType, useEffect, useState } from "react";
import { createPortal, flushSync } from "react-dom";
import { Late, LateBody } from "../../parts/late.tsx";
import { layerMissing, openLayer } from "../../parts/layer.ts";
import { useLayer } from "../../state/address.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import type { PacketPagesProps } from "./PacketPages.tsx";
import { takePrintWish, wishPrint } from "./printWish.ts";

const PACKET = new LateBody(async () => (await import("./PacketView.tsx")).PacketView);

/** Milliseconds after which the pages are fetched, so that a browser's own print has them at once. */
const FETCHED_AFTER = 4000;

/**
 * The print packet: as a layer where it is asked for, by Ctrl+P too; and where the browser prints by its own menu, the same pages with
 * what is worked out by then. Nothing where something else is printed on purpose: a layer, or a sheet that prints alone.
 */
export function PacketLayer() {
  const truck = useWorkbench((s) => s.truck);
  const layer = useLayer();
  useEffect(() => {
    if (truck === null || layer !== null) return;
    const listen = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.shiftKey || event.defaultPrevented)
        return;
      if (event.key.toLowerCase() !== "p" || isElsewhere()) return;
      event.preventDefault();
      wishPrint();
      openLayer("packet");
    };
    addEventListener("keydown", listen);
    return () => removeEventListener("keydown", listen);
  }, [truck, layer]);
  if (truck === null) return null;
  if (layer === "packet") return <Late of={PACKET} props={{ truck }} words="" onMissing={packetMissing} />;
  return layer === null ? <Behind truck={truck} /> : null;
}

function packetMissing(): void {
  takePrintWish();
  layerMissing("packet");
}

/** Something of the page prints by itself, or the help does, which is open over it. */
function isElsewhere(): boolean {
  const { print } = document.documentElement.dataset;
  return (print !== undefined && print !== "packet") || document.querySelector(".docs[open]") !== null;
}

/** The pages beside the workbench while the browser prints of its own accord. */
function Behind({ truck }: { truck: Truck }) {
  const [isPrinting, setPrinting] = useState(false);
  const [Pages, setPages] = useState<ComponentType<PacketPagesProps> | null>(null);
  useEffect(() => {
    let isGone = false;
    // Again and again while it cannot be fetched.
    const fetchPages = () =>
      import("./PacketPages.tsx").then(
        ({ PacketPages }) => setPages(() => PacketPages),
        () => {
          if (!isGone) timer = setTimeout(fetchPages, FETCHED_AFTER);
        },
      );
    let timer = setTimeout(fetchPages, FETCHED_AFTER);
    return () => {
      isGone = true;
      clearTimeout(timer);
    };
  }, []);
  const isFetched = Pages !== null;
  useEffect(() => {
    if (!isFetched) return;
    const root = document.documentElement;
    const before = () => {
      if (isElsewhere()) return;
      root.dataset.print = "packet";
      // The page is laid out for the paper as soon as the event is over.
      flushSync(() => setPrinting(true));
    };
    const after = () => {
      if (root.dataset.print === "packet") delete root.dataset.print;
      setPrinting(false);
    };
    addEventListener("beforeprint", before);
    addEventListener("afterprint", after);
    return () => {
      removeEventListener("beforeprint", before);
      removeEventListener("afterprint", after);
      after();
    };
  }, [isFetched]);
  if (!isPrinting || Pages === null) return null;
  return createPortal(
    <div className="packet-behind">
      <Pages truck={truck} />
    </div>,
    document.body,
  );
}
