import { useThree } from "@react-three/fiber";
import { useEffect } from "react";
import {
  type BufferGeometry,
  DoubleSide,
  Mesh,
  MeshBasicMaterial,
  Raycaster,
  Triangle,
  Vector2,
  Vector3,
} from "three";
import type { Vec3 } from "../../geometry/vec.ts";
import { pressedPart, type ScanHit, scanPick, takeCross, useScanPick } from "../state/scanPick.ts";
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

/** Steps of the cross tried over a hole or past a bay of the scan. */
const MOST_STEPS = 8;

/** Pixels within which the cross comes to the scan's edge. */
const EDGE = 0.3;

function PressedScan({ part }: { part: Parameters<typeof bodyGeometry>[0] }) {
  const geometry = useGeometry(() => bodyGeometry(part), [part]);
  const gl = useThree((s) => s.gl);
  const get = useThree((s) => s.get);
  useEffect(() => {
    const { domElement } = gl;
    const solid = new Mesh(geometry, new MeshBasicMaterial({ side: DoubleSide }));
    let from: { readonly x: number; readonly y: number } | null = null;
    /** What lies at a place of the picture, pixels from its corner. */
    const hitAt = (x: number, y: number): ScanHit | null => {
      const { camera, size } = get();
      const ray = new Raycaster();
      ray.setFromCamera(new Vector2((2 * x) / size.width - 1, 1 - (2 * y) / size.height), camera);
      const hit = ray.intersectObject(solid)[0];
      if (!hit?.face) return null;
      const corner = (k: number) => new Vector3().fromBufferAttribute(geometry.getAttribute("position"), k);
      const { a, b, c } = hit.face;
      const shares = Triangle.getBarycoord(hit.point, corner(a), corner(b), corner(c), new Vector3());
      return (
        shares && {
          triangle: hit.faceIndex!,
          shares: [shares.x, shares.y, shares.z],
          at: [hit.point.x, hit.point.y, hit.point.z],
        }
      );
    };
    const placeOf = (at: Vec3) => {
      const { camera, size } = get();
      const { x, y } = new Vector3(...at).project(camera);
      return { x: 0.5 * (x + 1) * size.width, y: 0.5 * (1 - y) * size.height };
    };
    const moveCross = (right: number, down: number) => {
      const { cross } = scanPick.getState();
      const start = cross ? placeOf(cross.at) : middleOf(geometry, placeOf, get().size);
      let found = cross ? null : hitAt(start.x, start.y);
      for (let step = 1; found === null && step <= MOST_STEPS && (right !== 0 || down !== 0); step++)
        found = hitAt(start.x + step * right, start.y + step * down);
      if (found) scanPick.setState({ cross: found, isAtEdge: false });
      else if (cross) scanPick.setState({ cross: toEdge(start, right, down) ?? cross, isAtEdge: true });
    };
    /** The last of the scan on the way of a step that leaves it, found by halving; null = none that is nearer to the edge. */
    const toEdge = (start: { readonly x: number; readonly y: number }, right: number, down: number) => {
      let [on, step]: [number, number] = [0, 0.5];
      let last: ScanHit | null = null;
      for (; step * Math.hypot(right, down) > EDGE; step *= 0.5) {
        const hit = hitAt(start.x + (on + step) * right, start.y + (on + step) * down);
        if (hit) [on, last] = [on + step, hit];
      }
      return last;
    };
    const onDown = ({ clientX, clientY }: PointerEvent) => {
      from = { x: clientX, y: clientY };
    };
    const onUp = ({ clientX, clientY, pointerType }: PointerEvent) => {
      const { asked } = scanPick.getState();
      if (!from || Math.hypot(clientX - from.x, clientY - from.y) > STILL || asked?.on !== "scan") return;
      const { left, top } = domElement.getBoundingClientRect();
      const hit = hitAt(clientX - left, clientY - top);
      if (!hit) return;
      // A finger hides what it presses: it puts the cross there.
      scanPick.setState({ cross: hit, isAtEdge: false });
      if (pointerType !== "touch") takeCross();
    };
    scanPick.setState({ moveCross });
    domElement.addEventListener("pointerdown", onDown);
    domElement.addEventListener("pointerup", onUp);
    return () => {
      scanPick.setState({ moveCross: null });
      domElement.removeEventListener("pointerdown", onDown);
      domElement.removeEventListener("pointerup", onUp);
      solid.material.dispose();
    };
  }, [gl, get, geometry]);
  return <Solid geometry={geometry} tone="body" hasOutline={false} />;
}

/** Where on the picture the cross comes out: the middle of the triangle that lies nearest to the picture's own middle, pixels. */
function middleOf(
  geometry: BufferGeometry,
  placeOf: (at: Vec3) => { readonly x: number; readonly y: number },
  { width, height }: { readonly width: number; readonly height: number },
): { readonly x: number; readonly y: number } {
  const positions = geometry.getAttribute("position");
  const { index } = geometry;
  const corners = index ? index.count : positions.count;
  const corner = (k: number) => new Vector3().fromBufferAttribute(positions, index ? index.getX(k) : k);
  let best = { x: 0.5 * width, y: 0.5 * height };
  let least = Number.POSITIVE_INFINITY;
  const step = 3 * Math.max(1, Math.floor(corners / 3 / MOST_LOOKED_AT));
  for (let k = 0; k + 2 < corners; k += step) {
    const { x, y, z } = corner(k)
      .add(corner(k + 1))
      .add(corner(k + 2))
      .divideScalar(3);
    const place = placeOf([x, y, z]);
    const off = Math.hypot(place.x - 0.5 * width, place.y - 0.5 * height);
    if (off < least) [best, least] = [place, off];
  }
  return best;
}

/** Triangles among which that is looked for. */
const MOST_LOOKED_AT = 2000;
