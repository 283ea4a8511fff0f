import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { workbench } from "../../state/workbench.ts";
import { useExampleWord } from "./useIsFromExample.ts";

export type ExampleMarkProps = {
  id: string;
  path: KeyPath;
  /** Whether the number still is the example's. */
  isExample: boolean;
};

/**
 * Under a field that holds an example's number: that it does, and the way to say that it is right. Once it is the truck's
 * own it says that, in a line as high: what is being pressed below it stays under the pointer.
 */
export function ExampleMark({ id, path, isExample }: ExampleMarkProps) {
  const word = useExampleWord();
  return (
    <p className="example-mark">
      <span id={id}>{isExample ? `⋯ ${word}` : "✓ your own"}</span>
      {isExample && (
        <button
          type="button"
          className="link-button"
          title="It is right as it stands: I measured it"
          onClick={() => workbench.getState().claimFields([path])}
        >
          I measured it
        </button>
      )}
    </p>
  );
}
