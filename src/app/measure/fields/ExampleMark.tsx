import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { workbench } from "../../state/workbench.ts";

export type ExampleMarkProps = {
  id: string;
  path: KeyPath;
};

/** Under a field that holds an example's number: that it does, and the way to say that it is right. */
export function ExampleMark({ id, path }: ExampleMarkProps) {
  return (
    <p className="example-mark">
      <span id={id}>⋯ from the example</span>{" "}
      <button
        type="button"
        className="link-button"
        title="It is right as it stands: I measured it"
        onClick={() => workbench.getState().claimFields([path])}
      >
        I measured it
      </button>
    </p>
  );
}
