/** Prints the alignment card alone, for the wall beside the rack. */
export function PrintCard() {
  const print = () => {
    const root = document.documentElement;
    root.dataset.print = "aligning";
    addEventListener("afterprint", () => delete root.dataset.print, { once: true });
    window.print();
  };
  return (
    <button type="button" className="button" onClick={print}>
      Print
    </button>
  );
}
