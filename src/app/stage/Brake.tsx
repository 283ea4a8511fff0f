import type { CaliperSetup, HardwareSetup, KnuckleSetup, RotorSetup } from "../../setup/types/types.ts";
import { caliperGeometry, rotorGeometry } from "./hardwareGeometry.ts";
import { Solid } from "./Solid.tsx";
import { useGeometry } from "./useGeometry.ts";

export type BrakeProps = {
  knuckle: KnuckleSetup;
  hardware: HardwareSetup;
};

/** Rotor and caliper, as far as the setup gives them. Knuckle frame. */
export function Brake({ knuckle, hardware: { rotor, caliper } }: BrakeProps) {
  return (
    <>
      {rotor && <Rotor knuckle={knuckle} rotor={rotor} />}
      {caliper && <Caliper knuckle={knuckle} caliper={caliper} />}
    </>
  );
}

function Rotor({ knuckle, rotor }: { knuckle: KnuckleSetup; rotor: RotorSetup }) {
  const geometry = useGeometry(() => rotorGeometry(knuckle, rotor), [knuckle, rotor]);
  return <Solid geometry={geometry} tone="rod" />;
}

function Caliper({ knuckle, caliper }: { knuckle: KnuckleSetup; caliper: CaliperSetup }) {
  const geometry = useGeometry(() => caliperGeometry(knuckle, caliper), [knuckle, caliper]);
  return <Solid geometry={geometry} tone="arm" />;
}
