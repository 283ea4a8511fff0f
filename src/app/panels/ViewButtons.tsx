import { useWorkbench } from "../state/useWorkbench.ts";
import type { ViewName } from "../state/workbenchState.ts";

const VIEWS: readonly { readonly name: ViewName; readonly label: string }[] = [
  { name: "three-quarter", label: "Three-quarter" },
  { name: "front", label: "Front" },
  { name: "side", label: "Side" },
  { name: "top", label: "Top" },
];

/** From where the truck is looked at. Pressing the one in use sets it straight again after turning it by hand. */
export function ViewButtons() {
  const view = useWorkbench((s) => s.view);
  const setView = useWorkbench((s) => s.setView);
  return (
    <fieldset className="views">
      <legend className="sr-only">View</legend>
      {VIEWS.map(({ name, label }) => (
        <button
          key={name}
          type="button"
          className="view-button"
          aria-pressed={view === name}
          onClick={() => setView(name)}
        >
          {label}
        </button>
      ))}
    </fieldset>
  );
}
