import "./jumpBar.css";

export type JumpBarProps = {
  /** What each place is called, and its heading or what opens it (a selector). */
  places: readonly (readonly [name: string, selector: string])[];
};

/** Ways to what lies below the screen at a station. */
export function JumpBar({ places }: JumpBarProps) {
  return (
    <nav className="jump-bar" aria-label="On this page">
      <span className="jump-word">On this page:</span>
      {places.map(([name, selector]) => (
        <button key={name} type="button" className="jump" onClick={() => goTo(selector)}>
          {name}
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
  if (block instanceof HTMLDetailsElement && !block.open) {
    // What is in a fold is there once it has told that it is open; before, the page may be too short to get there.
    const arrive = () => requestAnimationFrame(() => block.scrollIntoView({ block: "start" }));
    block.addEventListener("toggle", arrive, { once: true });
    block.open = true;
  }
  block.scrollIntoView({ block: "start" });
  if (place.tabIndex < 0) place.tabIndex = -1;
  place.focus({ preventScroll: true });
}
