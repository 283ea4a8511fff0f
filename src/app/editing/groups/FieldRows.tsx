import type { KeyPath } from "../../../setup/keyPath.ts";
import { FieldRow } from "../FieldRow.tsx";

export type FieldRowsProps = {
  of: KeyPath;
  keys: readonly string[];
};

/** Fields of one block, one below the other. */
export function FieldRows({ of, keys }: FieldRowsProps) {
  return keys.map((key) => <FieldRow key={key} path={[...of, key]} />);
}
