import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { FieldRow } from "../fields/FieldRow.tsx";

export type FieldRowsProps = {
  of: KeyPath;
  keys: readonly string[];
};

/** Fields of one block, one below the other. */
export function FieldRows({ of, keys }: FieldRowsProps) {
  return keys.map((key) => <FieldRow key={key} path={[...of, key]} />);
}
