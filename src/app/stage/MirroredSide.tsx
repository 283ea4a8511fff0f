import type { ReactNode } from "react";
import type { Side } from "../../suspension/frontEnd.ts";

export type MirroredSideProps = {
  side: Side;
  /** Drawn in the left-hand frame. */
  children: ReactNode;
};

/** Turns a left side into the side asked for: the one place of the stage where sides are mirrored. */
export function MirroredSide({ side, children }: MirroredSideProps) {
  return <group scale={[1, side === "right" ? -1 : 1, 1]}>{children}</group>;
}
