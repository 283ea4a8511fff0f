import "./jumpBar.css";

interface Place {
  readonly label: string;
  /** Its heading, or what opens it. */
  readonly selector: string;
  /** Only where it is not in sight anyway: on a phone, or on any screen too narrow for three columns. */
  readonly on?: "phone" | "narrow";
}

const PLACES: readonly Place[] = [
  { label: "Truck", selector: "#verdict-title", on: "phone" },
  { label: "Map", selector: "#map-title", on: "phone" },
  { label: "Setup", selector: "#setup-title", on: "narrow" },
  { label: "Plots", selector: "#plots-title" },
  { label: "Variants", selector: "#variants-title" },
  { label: "Fan a field", selector: ".fan > summary" },
];

/** Ways to what lies below the screen. On a phone it stays at the thumb, with every part of the page. */
export function JumpBar() {
  return (
    <nav className="jump-bar" aria-label="Parts of the page">
      <span className="jump-word">Below:</span>
      {PLACES.map(({ label, selector, on }) => (
        <button
          key={label}
          type="button"
          className={on ? `jump jump-${on}` : "jump"}
          onClick={() => goTo(selector)}
        >
          {label}
        </button>
      ))}
    </nav>
  );
}

/** The keyboard goes on from there, as after a link. */
function goTo(selector: string): void {
  const place = document.querySelector<HTMLElement>(selector);
  if (!place) return;
  const block = place.closest<HTMLElement>("section, details") ?? place;
  if (block instanceof HTMLDetailsElement) block.open = true;
  block.scrollIntoView({ block: "start" });
  if (place.tabIndex < 0) place.tabIndex = -1;
  place.focus({ preventScroll: true });
}
