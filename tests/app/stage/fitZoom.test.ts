import fc from "fast-check";
import { OrthographicCamera, Vector3 } from "three";
import { expect, it } from "vitest";
import { fitZoom } from "../../../src/app/stage/viewFit.ts";

const EXTENT = { min: [-450, -1000, 0], max: [450, 1000, 800] } as const;
/** Looking level along −X at the extent's middle, 900 by 400 pixels. */
function ahead(): OrthographicCamera {
  const camera = new OrthographicCamera(-450, 450, 200, -200, 10, 14000);
  camera.up.set(0, 0, 1);
  camera.position.set(6000, 0, 400);
  camera.lookAt(0, 0, 400);
  camera.updateMatrixWorld();
  return camera;
}

it("a view of points holds them alone: where they leave the box's corners free, it is nearer", () => {
  const corners = fitZoom(ahead(), EXTENT, 900, 400);
  const points = [
    [450, 0, 0],
    [-450, 500, 400],
  ] as const;
  expect(corners).toBeCloseTo((0.95 * 450) / 1000, 9);
  // Now the lower point, 400 mm below the middle, is what is farthest out.
  expect(fitZoom(ahead(), { ...EXTENT, points }, 900, 400)).toBeCloseTo((0.95 * 200) / 400, 9);
});

it("the view holds every corner of the truck from any direction, and wastes no picture in both ways at once", () => {
  const angle = fc.double({ min: -3, max: 3, noNaN: true });
  fc.assert(
    fc.property(angle, fc.double({ min: -1.5, max: 1.5, noNaN: true }), (azimuth, height) => {
      const [width, tall] = [900, 400];
      const camera = new OrthographicCamera(-width / 2, width / 2, tall / 2, -tall / 2, 10, 14000);
      camera.up.set(0, 0, 1);
      const flat = Math.cos(height);
      camera.position.set(
        6000 * flat * Math.cos(azimuth),
        6000 * flat * Math.sin(azimuth),
        400 + 6000 * Math.sin(height),
      );
      camera.lookAt(0, 0, 400);
      camera.updateMatrixWorld();
      camera.zoom = fitZoom(camera, EXTENT, width, tall);
      camera.updateProjectionMatrix();
      let widest = 0;
      for (const x of [-450, 450])
        for (const y of [-1000, 1000])
          for (const z of [0, 800]) {
            const seen = new Vector3(x, y, z).project(camera);
            widest = Math.max(widest, Math.abs(seen.x), Math.abs(seen.y));
          }
      expect(widest).toBeLessThanOrEqual(1);
      expect(widest).toBeGreaterThan(0.9);
    }),
    { seed: 1955, numRuns: 300 },
  );
});
