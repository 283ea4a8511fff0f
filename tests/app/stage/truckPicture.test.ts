import { describe, expect, it } from "vitest";
import { lipPanelGeometry } from "../../../src/app/stage/lipPanel.ts";
import { isLip, type WheelPlace } from "../../../src/app/stage/lips.ts";
import { brightness, type Finish } from "../../../src/app/stage/litBall.ts";
import { treadGeometry } from "../../../src/app/stage/treadGeometry.ts";
import type { BodyPart, PathPart } from "../../../src/setup/types/truckTypes.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";

const wheel: WheelPlace = { y: 760, z: 345, freeRadius: 355 };
const path = (points: PathPart["points"]): PathPart =>
  ({ name: "it", kind: "path", side: "both", radius: 2.5, points }) as PathPart;
const arch = path([
  [420, 840, 420],
  [0, 850, 790],
  [-420, 840, 430],
]);

describe("the side of a fender", () => {
  it("stands over a lip, and over nothing else", () => {
    expect(isLip(arch, wheel)).toBe(true);
    expect(isLip(path(arch.points.map(([x, y, z]) => [x, -y, z])), wheel), "on the right side as typed").toBe(
      true,
    );
    expect(isLip(path(arch.points.map(([x, y, z]) => [x, y - 200, z])), wheel), "inboard of the wheel").toBe(
      false,
    );
    expect(isLip(path(arch.points.map(([x, y, z]) => [0.3 * x, y, z])), wheel), "a short bracket").toBe(
      false,
    );
    expect(isLip(path(arch.points.map(([x, y, z]) => [x, y, 0.3 * z])), wheel), "a step under the sill").toBe(
      false,
    );
    const box: BodyPart = {
      name: "it",
      kind: "box",
      side: "both",
      min: [-500, 800, 300],
      max: [500, 900, 900],
    };
    expect(isLip(box, wheel)).toBe(false);
  });

  it("rises from the lip's own points and fades to nothing above it and past its ends", () => {
    const panel = lipPanelGeometry(arch);
    const at = panel.getAttribute("position");
    const there = panel.getAttribute("color");
    const xs = arch.points.map(([x]) => x);
    const feet = new Set<string>();
    for (let i = 0; i < at.count; i++) {
      const [x, y, z] = [at.getX(i), at.getY(i), at.getZ(i)];
      const alpha = there.getW(i);
      if (z > 790 + 100 || x > Math.max(...xs) || x < Math.min(...xs)) expect(alpha).toBe(0);
      for (const point of arch.points) {
        if (Math.hypot(point[0] - x, point[1] - y, point[2] - z) > 1e-3) continue;
        feet.add(point.join());
        expect(alpha).toBeGreaterThan(0.5);
      }
    }
    expect(feet.size).toBe(arch.points.length);
    panel.dispose();
  });
});

describe("a tire's tread", () => {
  it("lies on the profile that gaps are measured to, within its tread", () => {
    const { profile, freeRadius } = assembledModel(demoSetup()).tire;
    const tread = treadGeometry(profile);
    const at = tread.getAttribute("position");
    expect(at.count).toBeGreaterThan(1000);
    for (let i = 0; i < at.count; i++) {
      const r = Math.hypot(at.getX(i), at.getZ(i));
      expect(r).toBeLessThanOrEqual(freeRadius + 1);
      expect(r).toBeGreaterThan(freeRadius - 9);
    }
    tread.dispose();
  });

  it("is nothing on a profile that comes to a point", () => {
    const tread = treadGeometry([-100, 200, 0, 350, 100, 200]);
    expect(tread.getAttribute("position").count).toBe(0);
  });
});

describe("a lit ball", () => {
  it("never shows a surface darker than black or brighter than its color, and has light from above", () => {
    for (const finish of ["rubber", "metal", "paint"] satisfies Finish[]) {
      for (let x = -1; x <= 1; x += 0.1) {
        for (let y = -1; y <= 1; y += 0.1) {
          if (x * x + y * y > 1) continue;
          const share = brightness(finish, x, y, Math.sqrt(Math.max(0, 1 - x * x - y * y)));
          expect(share).toBeGreaterThan(0.2);
          expect(share).toBeLessThanOrEqual(1);
        }
      }
      expect(brightness(finish, -0.3, 0.8, 0.5)).toBeGreaterThan(brightness(finish, 0.3, -0.8, 0.5));
    }
  });
});
