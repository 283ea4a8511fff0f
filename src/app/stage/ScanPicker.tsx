import { useThree } from "@react-three/fiber";
import { useEffect } from "react";
import { DoubleSide, Mesh, MeshBasicMaterial, Raycaster, Triangle, Vector2, Vector3 } from "three";
import { endPick, pressedPart, scanPick, useScanPick } from "../state/scanPick.ts";
import type { Truck } from "../state/truck.ts";
import { bodyGeometry } from "./bodyGeometry.ts";
import { Solid } from "./Solid.tsx";
import { useGeometry } from "./useGeometry.ts";

export type ScanPickerProps = { truck: Truck };

/** Pixels that a press may move by; more turns the picture. */
const STILL = 5;

/** The scan that is pressed on, drawn alone where it stands. */
export function ScanPicker({ truck }: ScanPickerProps) {
  const at = useScanPick(pressedPart);
  const part = at === null ? undefined : truck.setup.truck.body[at];
  return part?.kind === "mesh" ? <PressedScan part={part} /> : null;
}

function PressedScan({ part }: { part: Parameters<typeof bodyGeometry>[0] }) {
  const geometry = useGeometry(() => bodyGeometry(part), [part]);
  const gl = useThree((s) => s.gl);
  const get = useThree((s) => s.get);
  useEffect(() => {
    const { domElement } = gl;
    const solid = new Mesh(geometry, new MeshBasicMaterial({ side: DoubleSide }));
    let from: { readonly x: number; readonly y: number } | null = null;
    const onDown = ({ clientX, clientY }: PointerEvent) => {
      from = { x: clientX, y: clientY };
    };
    const onUp = ({ clientX, clientY }: PointerEvent) => {
      const { asked } = scanPick.getState();
      if (!from || Math.hypot(clientX - from.x, clientY - from.y) > STILL || asked?.on !== "scan") return;
      const { left, top, width, height } = domElement.getBoundingClientRect();
      const { camera } = get();
      const ray = new Raycaster();
      ray.setFromCamera(
        new Vector2((2 * (clientX - left)) / width - 1, 1 - (2 * (clientY - top)) / height),
        camera,
      );
      const hit = ray.intersectObject(solid)[0];
      if (!hit?.face) return;
      const corner = (k: number) => new Vector3().fromBufferAttribute(geometry.getAttribute("position"), k);
      const { a, b, c } = hit.face;
      const shares = Triangle.getBarycoord(hit.point, corner(a), corner(b), corner(c), new Vector3());
      if (!shares) return;
      endPick();
      asked.take({
        triangle: hit.faceIndex!,
        shares: [shares.x, shares.y, shares.z],
        at: [hit.point.x, hit.point.y, hit.point.z],
      });
    };
    domElement.addEventListener("pointerdown", onDown);
    domElement.addEventListener("pointerup", onUp);
    return () => {
      domElement.removeEventListener("pointerdown", onDown);
      domElement.removeEventListener("pointerup", onUp);
      solid.material.dispose();
    };
  }, [gl, get, geometry]);
  return <Solid geometry={geometry} tone="body" hasOutline={false} />;
}
