import { goToStation } from "../state/address.ts";

/** Past the heading by one key: first in the tab order, seen only when they have the focus. */
export function SkipLinks() {
  return (
    <div className="skip-links">
      <button type="button" className="button" onClick={() => focusOn(".verdict")}>
        Skip to the answer
      </button>
      <button type="button" className="button" onClick={() => focusOn(".stage")}>
        Skip to the picture
      </button>
      <button
        type="button"
        className="button"
        onClick={() => {
          goToStation("measure");
          // The fields are there when the page has been drawn anew.
          requestAnimationFrame(() => focusOn("[data-field] input, [data-field] select"));
        }}
      >
        Skip to the truck's numbers
      </button>
    </div>
  );
}

function focusOn(selector: string): void {
  const found = document.querySelector<HTMLElement>(selector);
  if (!found) return;
  if (found.tabIndex < 0) found.tabIndex = -1;
  found.focus();
  found.scrollIntoView({ block: "nearest" });
}
