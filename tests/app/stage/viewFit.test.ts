import { OrthographicCamera, Vector3 } from "three";
import { describe, expect, it } from "vitest";
import type { Extent } from "../../../src/app/stage/extents.ts";
import { knuckleExtent } from "../../../src/app/stage/knuckleExtent.ts";
import { fitZoom, isOutgrown, isUntouched, standAt, viewDirection } from "../../../src/app/stage/viewFit.ts";
import { type Truck, truckOf } from "../../../src/app/state/truck.ts";
import { exampleText } from "../exampleText.ts";

type Written = Record<string, Record<string, unknown>>;

/** The example with its knuckle or hardware changed; variants left out. */
function truck(change: (document: Written) => void = () => {}): Truck {
  const document = JSON.parse(exampleText) as Written;
  delete document.variants;
  change(document);
  const made = truckOf(JSON.stringify(document), "example.json", null);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

const [WIDTH, HEIGHT] = [800, 560];

/** A camera that looks at an extent from the front, as the picture of one knuckle does. */
function lookingAt(extent: Extent): OrthographicCamera {
  const camera = new OrthographicCamera(-WIDTH / 2, WIDTH / 2, HEIGHT / 2, -HEIGHT / 2, 10, 14000);
  standAt(camera, extent, viewDirection("front", "left"), 6000);
  camera.zoom = fitZoom(camera, extent, WIDTH, HEIGHT);
  camera.updateProjectionMatrix();
  return camera;
}

const isWhole = ({ points = [] }: Extent, camera: OrthographicCamera) =>
  points.every((point) => {
    const { x, y } = new Vector3(...point).project(camera);
    return Math.abs(x) <= 1 && Math.abs(y) <= 1;
  });

describe("the view of one knuckle", () => {
  const before = knuckleExtent(truck(), "left");
  const withRotor = (document: Written) => {
    document.knuckle!.pinHeight = "9 in";
    document.hardware = { rotor: { diameter: "13 in" } };
  };

  it("is set anew for a part that has outgrown it, and holds all of that", () => {
    const after = knuckleExtent(truck(withRotor), "left");
    expect(isOutgrown(before, after)).toBe(true);
    expect(isOutgrown(after, before)).toBe(true);
    expect(isWhole(after, lookingAt(before))).toBe(false);
    expect(isWhole(after, lookingAt(after))).toBe(true);
    expect(lookingAt(after).zoom).toBeLessThan(lookingAt(before).zoom);
  });

  it("stays for a part a sixteenth longer, which is in it whole all the same; for many of them it does not", () => {
    const longer = (sixteenths: number) =>
      knuckleExtent(
        truck(({ knuckle }) => {
          knuckle!.span = 10.52 + sixteenths / 16;
        }),
        "left",
      );
    expect(isOutgrown(before, longer(1))).toBe(false);
    expect(isWhole(longer(1), lookingAt(before))).toBe(true);
    expect(isOutgrown(before, longer(8))).toBe(true);
  });

  it("is a hand's own once one has turned, moved or zoomed it", () => {
    const camera = lookingAt(before);
    const { x, y, z } = camera.position;
    const set = { extent: before, zoom: camera.zoom, eye: [x, y, z] as const };
    expect(isUntouched(camera, set)).toBe(true);
    camera.position.x += 1e-6;
    camera.zoom *= 1 + 1e-9;
    expect(isUntouched(camera, set)).toBe(true);
    camera.zoom *= 1.01;
    expect(isUntouched(camera, set)).toBe(false);
    camera.zoom = set.zoom;
    camera.position.y += 5;
    expect(isUntouched(camera, set)).toBe(false);
  });
});
