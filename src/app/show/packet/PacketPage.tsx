import type { ReactNode } from "react";
import { PACKET_PAGES, type PacketPageName } from "../../../studies/wording/packetTexts.ts";

export type PacketPageProps = {
  page: PacketPageName;
  /** The truck it is of. */
  truck: string;
  children: ReactNode;
};

/** One page of the packet, with what it is and of which truck at its head. */
export function PacketPage({ page, truck, children }: PacketPageProps) {
  return (
    <section className={`packet-page packet-${page}`} aria-label={PACKET_PAGES[page]}>
      <header className="packet-head">
        <h2>{PACKET_PAGES[page]}</h2>
        <p>{truck}</p>
      </header>
      {children}
    </section>
  );
}
