import { useCallback, useRef } from "react";
import { BufferGeometry, Float32BufferAttribute, type Group, Vector3 } from "three";
import { floorOf } from "../../studies/wording/poseWords.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import { moveTo } from "./frames.ts";
import { useInk } from "./InkProvider.tsx";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

export type FloorShadeProps = {
  truck: Truck;
};

/** mm over the floor, so that its lines lie under the shade. */
const OVER = 1.5;

/** Half length and half width of the shade under the truck's middle, in free radii. */
const UNDER = [2.3, 2.7] as const;

// Leaf scratch.
const x = new Vector3();
const y = new Vector3();
const z = new Vector3();

/** Soft shade on the floor where the tires stand and under the truck between them. A picture of shade: no light is cast. */
export function FloorShade({ truck }: FloorShadeProps) {
  const { shade } = useInk();
  const spot = useGeometry(() => shadeGeometry(0.75), []);
  const wide = useGeometry(() => shadeGeometry(0.2), []);
  const groups = { left: useRef<Group>(null), right: useRef<Group>(null), under: useRef<Group>(null) };
  const { left, right, under } = groups;
  // biome-ignore lint/correctness/useExhaustiveDependencies: where shade comes to be drawn its places are set anew
  const apply = useCallback(
    (pose: SolvedPose) => {
      const { freeRadius, profile } = truck.model.tire;
      const width = profile[profile.length - 2]! - profile[0]!;
      for (const side of ["left", "right"] as const) {
        const { contactPatch, wheelAxis } = pose[side];
        moveTo((side === "left" ? left : right).current, (matrix) => {
          y.set(wheelAxis[0], wheelAxis[1], 0).normalize();
          z.set(0, 0, 1);
          x.crossVectors(y, z);
          // The two spots look alike from above, whichever way round.
          if (side === "right") y.negate();
          matrix
            .makeBasis(x.multiplyScalar(0.95 * freeRadius), y.multiplyScalar(0.95 * width), z)
            .setPosition(contactPatch[0], contactPatch[1], contactPatch[2] + OVER);
        });
      }
      moveTo(under.current, (matrix) => {
        matrix
          .makeScale(UNDER[0] * freeRadius, UNDER[1] * freeRadius, 1)
          .setPosition(0, 0, floorOf(pose) + 0.5 * OVER);
      });
    },
    [truck, shade, left, right, under],
  );
  usePoseSync(truck, apply);
  if (shade === null) return null;
  return (
    <>
      <group ref={under} matrixAutoUpdate={false}>
        <mesh geometry={wide} material={shade} renderOrder={-2} />
      </group>
      {[left, right].map((ref, i) => (
        <group key={i === 0 ? "left" : "right"} ref={ref} matrixAutoUpdate={false}>
          <mesh geometry={spot} material={shade} renderOrder={-1} />
        </group>
      ))}
    </>
  );
}

/** Share of the way out, and of the darkness left there. */
const RINGS = [
  [0, 1],
  [0.25, 0.86],
  [0.5, 0.5],
  [0.75, 0.15],
  [1, 0],
] as const;
const SEGMENTS = 32;

/** A level disk of radius 1 that fades out. @param dark how dark its middle is, 0 to 1 */
function shadeGeometry(dark: number): BufferGeometry {
  const positions: number[] = [];
  const colors: number[] = [];
  const corner = ([out, share]: readonly [number, number], k: number) => {
    const turn = (2 * Math.PI * k) / SEGMENTS;
    positions.push(out * Math.cos(turn), out * Math.sin(turn), 0);
    colors.push(1, 1, 1, dark * share);
  };
  for (let i = 0; i + 1 < RINGS.length; i++) {
    const [near, far] = [RINGS[i]!, RINGS[i + 1]!];
    for (let k = 0; k < SEGMENTS; k++) {
      corner(near, k);
      corner(far, k);
      corner(far, k + 1);
      corner(near, k);
      corner(far, k + 1);
      corner(near, k + 1);
    }
  }
  return new BufferGeometry()
    .setAttribute("position", new Float32BufferAttribute(positions, 3))
    .setAttribute("color", new Float32BufferAttribute(colors, 4));
}
