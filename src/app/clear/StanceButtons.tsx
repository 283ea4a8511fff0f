import { stanceAt } from "../../studies/wording/poseText.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";

export type StanceButtonsProps = {
  truck: Truck;
};

/** The setup's named heights. Draws nothing when it has none. */
export function StanceButtons({ truck }: StanceButtonsProps) {
  const travel = useWorkbench((s) => s.travel);
  const setTravel = useWorkbench((s) => s.setTravel);
  const standing = stanceAt(travel, truck.setup);
  if (truck.setup.stances.length === 0) return null;
  return (
    <div className="stances">
      {truck.setup.stances.map((stance) => (
        <button
          key={stance.name}
          type="button"
          className="button"
          aria-pressed={stance.name === standing}
          onClick={() => setTravel(stance.travel)}
        >
          {stance.name}
        </button>
      ))}
    </div>
  );
}
