import "./standing.css";
import { useWorkbench } from "../state/useWorkbench.ts";
import { standingText } from "./standingText.ts";

/** As what the truck is shown, aligned or as bolted on; nothing where there is no difference. */
export function StandingTag() {
  const text = useWorkbench((s) => s.truck && standingText(s.truck, s.isAligned));
  if (text === null) return null;
  const isPlain = text === "aligned" || text === "as bolted on";
  return (
    <p className="standing-tag" data-plain={isPlain}>
      {text}
    </p>
  );
}
