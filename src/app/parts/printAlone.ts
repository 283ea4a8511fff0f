import "./print.css";

/** What of the page prints by itself. */
export type Printed = "jig" | "order" | "aligning" | "chart" | "plots" | "plot";

/** Prints one sheet of the page alone; what it leaves out says its own stylesheet. */
export function printAlone(what: Printed): void {
  const root = document.documentElement;
  root.dataset.print = what;
  addEventListener("afterprint", () => delete root.dataset.print, { once: true });
  window.print();
}
