/** Prints the jig sheet alone, for the bench. */
export function PrintJig() {
  const print = () => {
    const root = document.documentElement;
    root.dataset.print = "jig";
    addEventListener("afterprint", () => delete root.dataset.print, { once: true });
    window.print();
  };
  return (
    <button type="button" className="button" onClick={print}>
      Print the jig sheet
    </button>
  );
}
