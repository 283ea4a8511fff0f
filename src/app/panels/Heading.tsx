import "./heading.css";
import { useWorkbench } from "../state/useWorkbench.ts";
import { OpenButton } from "./OpenButton.tsx";
import { VariantPicker } from "./VariantPicker.tsx";

/** Like the title block of a drawing: the program, the setup on the board, which variant of it, and another one. */
export function Heading() {
  const truck = useWorkbench((s) => s.truck);
  return (
    <header className="heading">
      <h1 className="heading-name">Wellsweep</h1>
      <p className="heading-setup">{truck ? truck.setup.name : "no setup yet"}</p>
      {truck && <VariantPicker truck={truck} />}
      <OpenButton />
    </header>
  );
}
