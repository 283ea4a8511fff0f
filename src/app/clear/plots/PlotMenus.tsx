import { Menu } from "../../parts/Menu.tsx";
import type { Truck } from "../../state/truck.ts";
import { hasVariants, type Laid, layOver, useLaidNames, useMaking, variantsBeside } from "./laidOver.ts";
import { choosePlots, usePlotChoice } from "./plotChoice.ts";
import { plotNames } from "./plotSpecs.ts";

/** Which plots are shown: of those below the map, or of those in the dock. */
export function WhichPlots({ truck, of }: { truck: Truck; of: "panel" | "dock" }) {
  const hidden = usePlotChoice((s) => s.hidden);
  const docked = usePlotChoice((s) => s.docked);
  const isShown = (id: string) => (of === "dock" ? docked.includes(id) : !hidden.includes(id));
  const put = (id: string, isOn: boolean) => {
    const list = of === "dock" ? docked : hidden;
    const isListed = of === "dock" ? isOn : !isOn;
    const next = [...list.filter((one) => one !== id), ...(isListed ? [id] : [])];
    choosePlots(of === "dock" ? { docked: next } : { hidden: next });
  };
  return (
    <Menu label="Which curves" isLeft className="plot-menu">
      {() => (
        <>
          {plotNames(truck).map(({ id, title }) => (
            <label key={id}>
              <input
                type="checkbox"
                checked={isShown(id)}
                onChange={(event) => put(id, event.target.checked)}
              />{" "}
              {title}
            </label>
          ))}
        </>
      )}
    </Menu>
  );
}

/** What is laid over the truck shown, any number of variants; nothing where there are none. */
export function LayOver({ laid: { truck, others } }: { laid: Laid }) {
  const names = useLaidNames();
  const making = useMaking();
  if (!hasVariants(truck)) return null;
  const layAll = (beside: readonly { readonly name: string }[], isOn: boolean) => {
    for (const { name } of beside) layOver(name, isOn);
  };
  return (
    <Menu label={`Lay over${others.length > 0 ? `: ${others.length}` : ""}`} isLeft className="plot-menu">
      {() => {
        const beside = variantsBeside(truck, making);
        const isAll = beside.length > 0 && beside.every(({ name }) => names.includes(name));
        return (
          <>
            {beside.length > 1 && (
              <label>
                <input
                  type="checkbox"
                  checked={isAll}
                  onChange={(event) => layAll(beside, event.target.checked)}
                />{" "}
                All of them
              </label>
            )}
            {beside.map(({ name }) => (
              <label key={name}>
                <input
                  type="checkbox"
                  checked={names.includes(name)}
                  onChange={(event) => layOver(name, event.target.checked)}
                />{" "}
                {name}
              </label>
            ))}
          </>
        );
      }}
    </Menu>
  );
}

/** Whether steering is told by the wheel's angle or as a share of lock. */
export function SteeringScale() {
  const scale = usePlotChoice((s) => s.scale);
  return (
    <select
      className="plot-scale"
      aria-label="Steering scale"
      value={scale}
      onChange={(event) => choosePlots({ scale: event.target.value === "lock" ? "lock" : "angle" })}
    >
      <option value="angle">Steering in °</option>
      <option value="lock">Steering in % of lock</option>
    </select>
  );
}
