/** The layout of labels alone, over the trucks that come with the program: every view, many poses, three sizes of picture. */
import { readdirSync, readFileSync } from "node:fs";
import { OrthographicCamera, Vector3 } from "three";
import { describe, expect, it } from "vitest";
import { extentOf, wellExtent } from "../../../../src/app/stage/extents.ts";
import type { ScreenPoint } from "../../../../src/app/stage/overlay/gapMark.ts";
import { fittingText, labelKeeper } from "../../../../src/app/stage/overlay/labelKeeper.ts";
import { doCross } from "../../../../src/app/stage/overlay/placeLabels.ts";
import { fitZoom, standAt, viewDirection } from "../../../../src/app/stage/viewFit.ts";
import { wheelsSeen } from "../../../../src/app/stage/wheelsSeen.ts";
import { type Truck, truckOf } from "../../../../src/app/state/truck.ts";
import type { ViewName } from "../../../../src/app/state/workbenchState.ts";
import { addScaled, type Vec3 } from "../../../../src/geometry/vec.ts";
import { checkClearance } from "../../../../src/studies/reports/check.ts";
import { type GapEntry, gapsAt } from "../../../../src/studies/reports/gapsAt.ts";
import { gapMarks, type MarkedGap, withSides } from "../../../../src/studies/wording/gapRows.ts";
import { solvePose } from "../../../../src/suspension/solvePose.ts";
import { runs } from "../../../runs.ts";

const SHARED = new URL("../../../../shared/", import.meta.url);
/** Those of the usual run, then all others that come whole in one file. */
const FIRST = ["half-ton-on-air.json", "worked/barrel-meets-rod-end.json", "long-bed-steering-box.json"];
const FILES = [
  ...FIRST,
  ...["", "worked/"]
    .flatMap((folder) => readdirSync(new URL(folder, SHARED)).map((name) => `${folder}${name}`))
    .filter((name) => name.endsWith(".json") && !FIRST.includes(name))
    .filter((name) => {
      const text = readFileSync(new URL(name, SHARED), "utf8");
      return text.includes('"wellsweep-setup"') && !text.includes('.stl"');
    }),
];
const VIEWS: readonly ViewName[] = ["three-quarter", "front", "side", "top", "well"];
/** Pictures at 1440, 1024 and 390 pixels of window. */
const SIZES = [
  [830, 560],
  [560, 420],
  [364, 245],
] as const;

/** About what the browser's own measure gives: no letter of the page's font is wider on average. */
const widthOf = (text: string) => 14 + 7.2 * text.length;
const HEIGHT = 20;
const CROSS = 13;
const FORMAT = { units: "in" } as const;

/** How the stage looks at a truck in a view, as pixels of a picture. */
function projection(truck: Truck, view: ViewName, [width, height]: readonly [number, number]) {
  const camera = new OrthographicCamera(-width / 2, width / 2, height / 2, -height / 2, 10, 14000);
  const extent = view === "well" ? wellExtent(truck, "left") : extentOf(truck);
  standAt(camera, extent, viewDirection(view, "left"), 6000);
  camera.zoom = fitZoom(camera, extent, width, height);
  camera.updateProjectionMatrix();
  return ([x, y, z]: Vec3): ScreenPoint => {
    const seen = new Vector3(x, y, z).project(camera);
    return { x: 0.5 * (seen.x + 1) * width, y: 0.5 * (1 - seen.y) * height };
  };
}

const FIXED: readonly Vec3[] = [
  [0, 0, 0],
  [1000, 0, 0],
  [0, 1000, 0],
  [0, 0, 1000],
];

describe.each(FILES.slice(0, runs(FIRST.length, FILES.length)))("labels on %s", (file) => {
  it("stand one a part and side, worst first, on nothing and across nothing, and stay while it is steered and raised", () => {
    const truck = truckFrom(file);
    const drags = dragsOf(truck);
    const { upperArm, lowerArm } = truck.setup.truck;
    const handles = [upperArm, lowerArm].flatMap((arm) => [arm.frontPivot, arm.rearPivot, arm.ballJoint]);
    const told = { asked: 0, shown: 0, onMark: 0, followed: 0, moved: 0, onTire: 0 };
    for (const marks of drags.flat()) {
      const keys = marks.map(keyOf);
      expect(new Set(keys).size).toBe(keys.length);
      const gaps = marks.filter(({ kind }) => kind === "now").map(({ gap }) => gap);
      expect(gaps).toEqual(gaps.toSorted((a, b) => a - b));
      expect(marks.findIndex(({ kind }) => kind === "elsewhere")).toBe(marks.length > gaps.length ? 0 : -1);
    }
    const sided = drags.map((drag) => drag.map((marks) => withSides(marks, allGaps(truck))));
    const near = drags.map((drag) => drag.map((marks) => marks.filter(({ side }) => side === "left")));
    for (const view of VIEWS)
      for (const size of SIZES) {
        const toScreen = projection(truck, view, size);
        const marked = view === "side" ? sided : view === "well" ? near : drags;
        for (const grips of [[], handles.map(toScreen)])
          for (const drag of marked) follow(drag, toScreen, size, grips, told, wheelsSeen(truck, toScreen));
      }
    // A mark goes without a label only where it is crowded.
    expect(told.shown / told.asked).toBeGreaterThan(0.6);
    expect(told.onMark / told.shown).toBeLessThan(0.03);
    expect(told.moved / told.followed).toBeLessThan(0.02);
    // Tires are seen: without a say of theirs a quarter to a third of every label lies on one.
    expect(told.onTire / told.shown).toBeLessThan(0.2);
  });
});

it.each(FILES)(
  "tires of %s stand whole in every view of the truck, at full droop and bump and either lock",
  (file) => {
    const truck = truckFrom(file);
    const { tire, frontEnd } = truck.model;
    const { droop, bump } = truck.setup.travel;
    for (const view of VIEWS.filter((one) => one !== "well"))
      for (const size of SIZES) {
        const toScreen = projection(truck, view, size);
        for (const travel of [droop, 0, bump])
          for (const steer of [-1, 0, 1]) {
            const pose = solvePose(frontEnd, travel, steer);
            if (!pose.ok) continue;
            for (const { wheelCenter, wheelAxis } of [pose.left, pose.right])
              for (const way of [-1, 1]) {
                const level = Math.hypot(wheelAxis[0], wheelAxis[1]);
                const ahead: Vec3 = [-wheelAxis[1] / level, wheelAxis[0] / level, 0];
                for (const rim of [ahead, [0, 0, 1] as const]) {
                  const { x, y } = toScreen(addScaled(wheelCenter, rim, way * tire.freeRadius));
                  expect(x >= 0 && x <= size[0] && y >= 0 && y <= size[1], `${view} ${travel} ${steer}`).toBe(
                    true,
                  );
                }
              }
          }
      }
  },
);

function truckFrom(file: string): Truck {
  const made = truckOf(readFileSync(new URL(file, SHARED), "utf8"), file, null);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

function allGaps({ model }: Truck): readonly GapEntry[] {
  const pose = solvePose(model.frontEnd, 0, 0);
  return pose.ok ? gapsAt(model, pose) : [];
}

const keyOf = ({ side, part }: MarkedGap) => `${side} ${part}`;

/** What is marked with a label on the way: steered lock to lock at three heights, then raised end to end. */
function dragsOf({ model, setup }: Truck): MarkedGap[][][] {
  const worst = checkClearance(model).worst;
  const { droop, bump } = setup.travel;
  const marksAt = (travel: number, steer: number) => {
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok) return [];
    const marks = gapMarks(gapsAt(model, pose), worst, false, null, setup.allowance, FORMAT);
    return [marks.filter(({ text }) => text !== "")];
  };
  const shares = Array.from({ length: 21 }, (_, i) => i / 20);
  return [
    ...[0, bump, droop].map((travel) => shares.flatMap((share) => marksAt(travel, 2 * share - 1))),
    shares.flatMap((share) => marksAt(droop + share * (bump - droop), 0)),
  ];
}

/** Lays out the labels of one drag and looks at each frame of it. */
function follow(
  drag: readonly (readonly MarkedGap[])[],
  toScreen: (point: Vec3) => ScreenPoint,
  [width, height]: readonly [number, number],
  grips: readonly ScreenPoint[],
  told: { asked: number; shown: number; onMark: number; followed: number; moved: number; onTire: number },
  covers: (at: ScreenPoint, half: number) => number,
): void {
  const place = labelKeeper();
  const eye = FIXED.map(toScreen);
  let before = new Map<string, { readonly at: ScreenPoint; readonly width: number }>();
  for (const gaps of drag) {
    const wanted = gaps
      .map((gap) => ({
        ...{ key: keyOf(gap), mark: toScreen(gap.onPart) },
        width: widthOf(fittingText(gap, widthOf, width)),
      }))
      .filter(({ mark: { x, y } }) => x >= 0 && x <= width && y >= 0 && y <= height);
    const marks = wanted.map(({ mark }) => mark);
    const found = place(wanted, { width, height, handles: grips, marks, covers }, eye);
    // Drawn again as it was, all stands where it stood.
    expect(place(wanted, { width, height, handles: grips, marks, covers }, eye)).toEqual(found);
    // The worst of all is always told.
    if (grips.length === 0 && found.length > 0) expect(found[0]).not.toBeNull();
    const seen = found.flatMap((at, i) => (at ? [{ at, ...wanted[i]! }] : []));
    told.asked += found.length;
    told.shown += seen.length;
    for (const [i, one] of seen.entries()) {
      told.onTire += covers(one.at, 0.5 * one.width);
      const half = { x: 0.5 * one.width, y: 0.5 * HEIGHT };
      const off = ({ x, y }: ScreenPoint) => ({ x: Math.abs(x - one.at.x), y: Math.abs(y - one.at.y) });
      expect(one.at.x >= half.x && one.at.x <= width - half.x, "in the picture").toBe(true);
      expect(one.at.y >= half.y && one.at.y <= height - half.y, "in the picture").toBe(true);
      for (const grip of grips)
        expect(off(grip).x >= half.x || off(grip).y >= half.y, "on a handle").toBe(true);
      // A cross reaches as far about its middle.
      if (marks.some((mark) => off(mark).x < half.x + CROSS && off(mark).y < half.y + CROSS)) told.onMark++;
      for (const other of seen.slice(i + 1)) {
        const { x, y } = off(other.at);
        expect(x >= half.x + 0.5 * other.width || y >= HEIGHT, "on each other").toBe(true);
        expect(doCross(one.mark, one.at, other.mark, other.at)).toBe(false);
        expect(isCovered(one, other) || isCovered(other, one), "on a leader").toBe(false);
      }
      const last = before.get(one.key);
      if (!last) continue;
      told.followed++;
      // At the picture's edge one that says more makes room for itself.
      const grown = Math.abs(0.5 * (one.width - last.width));
      const { x, y } = off(last.at);
      if (x > grown + 0.5 || y > 0.5) told.moved++;
    }
    before = new Map(seen.map((one) => [one.key, one]));
  }
}

type Seen = { readonly mark: ScreenPoint; readonly at: ScreenPoint; readonly width: number };

/** Whether a label's leader goes under another label, looked at place by place. */
function isCovered({ mark, at }: Seen, by: Seen): boolean {
  const half = 0.5 * by.width;
  const isBeside = Math.max(mark.x, at.x) < by.at.x - half || Math.min(mark.x, at.x) > by.at.x + half;
  if (isBeside || Math.max(mark.y, at.y) < by.at.y - HEIGHT || Math.min(mark.y, at.y) > by.at.y + HEIGHT)
    return false;
  return Array.from({ length: 101 }, (_, i) => i / 100).some((share) => {
    const x = mark.x + share * (at.x - mark.x);
    const y = mark.y + share * (at.y - mark.y);
    return Math.abs(x - by.at.x) < half - 1 && Math.abs(y - by.at.y) < 0.5 * HEIGHT - 1;
  });
}
