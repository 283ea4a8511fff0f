import type { KeyPath } from "../../setup/types/keyPath.ts";

/** A value that would mend an issue. */
export interface Suggestion {
  readonly path: KeyPath;
  /** As the file holds it; undefined = take the key out. */
  readonly value: unknown;
  /** `nearest` = the nearest value that goes together; `before` = what stood there when it last did. */
  readonly kind: "nearest" | "before";
}
