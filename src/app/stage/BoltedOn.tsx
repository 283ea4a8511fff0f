import { mergeGeometries } from "three/addons/utils/BufferGeometryUtils.js";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import type { CaliperSetup, HardwareSetup, KnuckleSetup, RotorSetup } from "../../setup/types/types.ts";
import { useStage } from "../state/stageSettings.ts";
import { CutSolid } from "./BuildBodies.tsx";
import { caliperGeometry, rotorGeometry, studsGeometry } from "./knuckleGeometry.ts";
import { Solid, type SolidProps } from "./Solid.tsx";
import { ballGeometry } from "./solidGeometry.ts";
import { useGeometry } from "./useGeometry.ts";

export type BrakeProps = {
  knuckle: KnuckleSetup;
  hardware: HardwareSetup;
  /** The part it is bolted to shows through. Default false. */
  isSeenThrough?: boolean;
};

/** Rotor and caliper, as far as the setup gives them. Knuckle frame. */
export function Brake({ knuckle, hardware: { rotor, caliper }, isSeenThrough = false }: BrakeProps) {
  const look = useVeil(isSeenThrough);
  return (
    <>
      {rotor && <Rotor knuckle={knuckle} rotor={rotor} {...look} />}
      {caliper && <Caliper knuckle={knuckle} caliper={caliper} {...look} />}
    </>
  );
}

type Look = Pick<SolidProps, "veil" | "hasOutline">;

/** How what is bolted to a built knuckle looks: cut open, its silhouette would be that of its far faces. */
function useVeil(isSeenThrough: boolean): Look {
  const isCutOpen = useStage((s) => s.isCutOpen);
  return isSeenThrough ? { veil: 1, hasOutline: !isCutOpen } : {};
}

function Rotor({ knuckle, rotor, ...look }: { knuckle: KnuckleSetup; rotor: RotorSetup } & Look) {
  const geometry = useGeometry(() => rotorGeometry(knuckle, rotor), [knuckle, rotor]);
  return <Solid geometry={geometry} tone="rod" {...look} />;
}

function Caliper({ knuckle, caliper, ...look }: { knuckle: KnuckleSetup; caliper: CaliperSetup } & Look) {
  const geometry = useGeometry(() => caliperGeometry(knuckle, caliper), [knuckle, caliper]);
  return <Solid geometry={geometry} tone="arm" {...look} />;
}

/** The ball joints' housings, that the studs are in. Knuckle frame. */
export function Housings({ span, hardware }: { span: number; hardware: HardwareSetup }) {
  const { upperBallJoint, lowerBallJoint } = hardware;
  const geometry = useGeometry(
    () =>
      mergeGeometries([
        ballGeometry([0, 0, 0], lowerBallJoint.radius),
        ballGeometry([0, 0, span], upperBallJoint.radius),
      ]),
    [span, upperBallJoint, lowerBallJoint],
  );
  return <Solid geometry={geometry} tone="rod" {...useVeil(true)} />;
}

/** The ball joints' studs, from the ball to the taper's large end, where the build tells of them. Knuckle frame. */
export function Studs({ studs, span }: { studs: BuildSetup["studs"]; span: number }) {
  const geometry = useGeometry(() => studsGeometry(studs, span), [studs, span]);
  return <CutSolid geometry={geometry} tone="rod" />;
}
