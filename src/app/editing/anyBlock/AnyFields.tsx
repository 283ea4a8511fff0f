import { type KeyPath, valueAt } from "../../../setup/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { AnyField } from "./AnyField.tsx";
import { keysOf } from "./keysOf.ts";

export type AnyFieldsProps = {
  /** Of a block. */
  path: KeyPath;
  /** Keys that have a place elsewhere. Default none. */
  except?: readonly string[];
};

const NONE: readonly string[] = [];

/** Every field of a block as the schema has it, for blocks and keys that no form was drawn up for. */
export function AnyFields({ path, except = NONE }: AnyFieldsProps) {
  // Drawn anew when the block changes: its sort decides which fields there are.
  useWorkbench((s) => valueAt(shownDocument(s), path));
  const document = useWorkbench(shownDocument);
  return keysOf(path, document)
    .filter((key) => !except.includes(key))
    .map((key) => <AnyField key={key} path={[...path, key]} />);
}
