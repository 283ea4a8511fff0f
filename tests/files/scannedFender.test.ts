import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readMesh } from "../../src/files/readMesh.ts";
import { readSetup } from "../../src/setup/readSetup.ts";
import type { MeshPart } from "../../src/setup/types/truckTypes.ts";
import { parseLength } from "../../src/units/parseLength.ts";
import { distanceToPart } from "../reference/onPart.ts";
import { lipInScan, lipOnTruck, scannedFenderStl } from "../reference/scan/scannedFender.ts";

const shared = new URL("../../shared/", import.meta.url);
const file = new Uint8Array(readFileSync(new URL("scanned-fender.stl", shared)));

function scan() {
  const read = readMesh(file, "scanned-fender.stl");
  if (!read.ok) throw new Error(read.mend);
  return read.mesh;
}

function setupText(): string {
  return readFileSync(new URL("scanned-fender.json", shared), "utf8");
}

function placedScan(): MeshPart {
  const read = readSetup(setupText(), "scanned-fender.json", null, new Map([["scanned-fender.stl", scan()]]));
  if (!read.ok) throw new Error(read.issues.map(({ key, mend }) => `${key}: ${mend}`).join("\n"));
  const [part] = read.value.setup.truck.body;
  if (part?.kind !== "mesh") throw new Error("the first part is the scan");
  return part;
}

/** Lengths of all edges, and how many belong to one triangle alone. */
function edges({ positions, triangles }: { positions: Float64Array; triangles: Uint32Array }) {
  const uses = new Map<string, number>();
  const lengths: number[] = [];
  for (let i = 0; i < triangles.length; i++) {
    const [a, b] = [triangles[i]!, triangles[i - (i % 3) + ((i + 1) % 3)]!];
    const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
    uses.set(key, (uses.get(key) ?? 0) + 1);
    lengths.push(Math.hypot(...[0, 1, 2].map((axis) => positions[3 * a + axis]! - positions[3 * b + axis]!)));
  }
  const counts = [...uses.values()];
  return {
    lengths: lengths.sort((p, q) => p - q),
    open: counts.filter((n) => n === 1).length,
    most: Math.max(...counts),
  };
}

describe("the scanned fender", () => {
  it("is what its generator writes (npm run scan writes it anew)", () => {
    expect(Buffer.compare(file, scannedFenderStl())).toBe(0);
    expect(file.length).toBeLessThan(700_000);
  });

  it("is like a scan: one thin surface with holes, of uneven density", () => {
    const mesh = scan();
    expect(mesh.triangles.length / 3).toBeGreaterThan(11_000);
    const { lengths, open, most } = edges(mesh);
    expect(most).toBe(2);
    // A sheet of this many triangles without holes has some 330 edges at its border.
    expect(open).toBeGreaterThan(500);
    const share = (p: number) => lengths[Math.floor(p * lengths.length)]!;
    expect(share(0.95) / share(0.05)).toBeGreaterThan(5);
  });

  it("is matched at three points of its lip, read off to 0.1 mm in the mesh and 1/16 in on the truck", () => {
    const { place } = JSON.parse(setupText()).truck.body[0];
    const at = [0.08, 0.5, 0.92];
    const read = at.map((share) => lipInScan(share).map((mm) => Math.round(10 * mm) / 10));
    expect(place.from).toEqual(read);
    place.to.forEach((point: string[], i: number) => {
      point.forEach((typed, axis) => {
        const length = parseLength(typed, "in");
        expect(length.ok && Math.abs(length.mm - lipOnTruck(at[i]!)[axis]!)).toBeLessThan(25.4 / 32 + 1e-9);
      });
    });
  });

  it("stands on the truck where its three points put it, within the tape and the noise", () => {
    const placed = placedScan();
    for (const along of [0.1, 0.3, 0.5, 0.6, 0.9])
      expect(distanceToPart(placed, lipOnTruck(along))).toBeLessThan(2);
  });
});
