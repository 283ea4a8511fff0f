import { dashesGeometry } from "./dashesGeometry.ts";
import { useInk } from "./InkProvider.tsx";
import { useGeometry } from "./useGeometry.ts";

export type SteeringAxisProps = {
  /** Lower to upper ball joint, mm. */
  span: number;
  /** How far it is drawn below the lower ball joint, mm. */
  reach: number;
};

/** The steering axis, drawn as a center line through both ball joints and toward the floor. Knuckle frame. */
export function SteeringAxis({ span, reach }: SteeringAxisProps) {
  const ink = useInk();
  const geometry = useGeometry(
    () =>
      dashesGeometry([
        [
          [0, 0, -reach],
          [0, 0, span + 120],
        ],
      ]),
    [span, reach],
  );
  return <lineSegments geometry={geometry} material={ink.centerLine} />;
}
