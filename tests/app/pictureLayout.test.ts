import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Box, drawingFrame, framePoints, slidOutline } from "../../src/app/show/counter/drawingFrame.ts";
import { brokenLines, lineRoom } from "../../src/app/show/counter/letterRoom.ts";
import { FONT, LINE, type PlacedText, pictureLayout } from "../../src/app/show/counter/pictureLayout.ts";
import {
  frontAround,
  type PictureContent,
  picturesOf,
  steeredAround,
  steeredPicture,
} from "../../src/app/show/counter/pictures.ts";
import { doCross } from "../../src/app/show/counter/placeTexts.ts";
import type { Comparison, Contender } from "../../src/app/show/counter/useComparison.ts";
import { hubFaceRange, truckAnswer, withHubFace } from "../../src/app/show/counter/whatIf.ts";
import { GivenMeshes } from "../../src/app/state/givenMeshes.ts";
import { type Truck, truckOf } from "../../src/app/state/truck.ts";
import { readMesh } from "../../src/files/readMesh.ts";
import { variantNames } from "../../src/setup/editing/resolveShown.ts";
import type { LengthFormat } from "../../src/units/formatLength.ts";
import { runs } from "../runs.ts";

const SHARED = new URL("../../shared/", import.meta.url);
const setups = readdirSync(SHARED)
  .map((name) => ({ name, text: name.endsWith(".json") ? readFileSync(new URL(name, SHARED), "utf8") : "" }))
  .filter(({ text }) => text.includes('"wellsweep-setup"'));

const scan = readMesh(new Uint8Array(readFileSync(new URL("scanned-fender.stl", SHARED))), "scan.stl");
const made = new Map<string, Truck>();

function truckFrom(text: string, file: string, variant: string | null): Truck {
  if (!scan.ok) throw new Error(scan.mend);
  const key = JSON.stringify([file, variant]);
  const meshes = new GivenMeshes(new Map([["scanned-fender.stl", scan.mesh]]));
  const read = made.has(key) ? null : truckOf(text, file, variant, meshes);
  if (read?.ok === false) throw new Error(read.issues.map(({ mend }) => mend).join("; "));
  if (read?.ok) made.set(key, read.value);
  return made.get(key)!;
}

/** The setup beside its first variant, or beside itself, at a height. */
function comparisonOf(text: string, file: string, travel: number): Comparison {
  const contender = (letter: "A" | "B", variant: string | null) =>
    ({
      letter,
      name: variant ?? "current truck",
      truck: truckFrom(text, file, variant),
      answer: truckAnswer(null, null),
    }) as Contender;
  const [variant] = variantNames(JSON.parse(text));
  const first = contender("A", null);
  const second = variant === undefined ? null : contender("B", variant);
  const [a, b] = [first, second ?? first].map(({ truck }) => truck.setup.knuckle.hubFace) as [number, number];
  return {
    ...{ first, second, travel, isSame: false, slider: second && hubFaceRange(a, b, 1) },
    stances: [{ name: "here", travel }],
  } as unknown as Comparison;
}

/** Where a text stands, px: no less than it takes in any font. */
function boxOf({ lines, x, y }: PlacedText, kind: "name" | "gap"): Box {
  const wide = Math.max(...lines.map((line) => lineRoom(line, FONT[kind], kind === "gap")));
  const half = 0.5 * lines.length * FONT[kind] * LINE[kind];
  const [left, right] = kind === "name" ? [x - wide, x] : [x, x + wide];
  return { left, right, top: y - half, foot: y + half };
}

const doOverlap = (a: Box, b: Box) =>
  a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot;

const WIDTHS = Array.from({ length: runs(11, 32) }, (_, i) => 280 + runs(62, 20) * i);
/** From above the buttons below the picture take some of its height. */
const HEIGHTS = { front: [200, 250, 310, 430, 640], above: [160, 250, 640] } as const;

/** What is wrong with a picture's texts at every size. */
function faultsOf(
  view: "front" | "above",
  { pictured, body }: PictureContent,
  around: ReturnType<typeof framePoints>,
  format: LengthFormat,
): readonly string[] {
  const faults: string[] = [];
  const points = [...pictured.flatMap(({ drawing }) => framePoints(drawing, view === "front")), ...around];
  for (const width of WIDTHS)
    for (const height of HEIGHTS[view]) {
      const frame = drawingFrame(points, view === "front", { width, height });
      const { names, gaps, dimensions } = pictureLayout(view, pictured, body, frame, format);
      const texts = [
        ...names.map((one) => ({ ...one, box: boxOf(one, "name"), from: [one.x + 3, one.y] as const })),
        ...gaps.map((one) => ({ ...one, box: boxOf(one, "gap"), from: [frame.labels, one.y] as const })),
        ...dimensions.map((one) => ({ ...one, box: boxOf(one, "gap"), from: one.to })),
      ];
      const fault = (said: string, { lines }: PlacedText) =>
        faults.push(`${width}x${height} ${lines.join(" ")}: ${said}`);
      for (const [i, one] of texts.entries()) {
        const { box, to } = one;
        if (box.left < 0 || box.top < 0 || box.right > width || box.foot > height)
          fault("past the frame", one);
        if (to[0] > box.left && to[0] < box.right && to[1] > box.top && to[1] < box.foot)
          fault("over its mark", one);
        if (to[0] < 0 || to[0] > width || to[1] < -1e-6 || to[1] > height + 1e-6)
          fault("its mark past the frame", one);
        for (const other of texts.slice(0, i)) {
          if (doOverlap(box, other.box)) fault(`over ${other.lines.join(" ")}`, one);
          if (doCross([one.from, to], [other.from, other.to])) {
            const isOneColumn = names.some((n) => n.to === to) === names.some((n) => n.to === other.to);
            if (isOneColumn) fault(`its leader across ${other.lines.join(" ")}'s`, one);
          }
        }
      }
    }
  return faults;
}

describe("what is written on a picture", () => {
  it.each(setups)("keeps clear of all else on $name, at every height and size", ({ name, text }) => {
    const heights = truckFrom(text, name, null).setup.stances.map(({ travel }) => travel);
    for (const travel of heights.length > 0 ? heights : [0]) {
      const comparison = comparisonOf(text, name, travel);
      const pictures = picturesOf(comparison);
      const { units } = comparison.first!.truck.setup;
      const format = units === "mm" ? { units } : ({ units, fraction: 64 } as const);
      expect(pictures.front.pictured.length, `at ${travel}`).toBeGreaterThan(0);
      const held = frontAround(pictures.front, comparison.slider);
      expect(faultsOf("front", pictures.front, held, format)).toEqual([]);
      expect(faultsOf("above", pictures.above, [], format)).toEqual([]);
      const around = steeredAround(comparison, pictures);
      for (let i = 0; i < runs(2, 9); i++) {
        const steered = steeredPicture(comparison, pictures, 1 - i / 4);
        expect(faultsOf("above", steered, around, format)).toEqual([]);
      }
    }
  });

  it("ends, and leaves names their room, on a picture that has none, as one that is not shown", () => {
    expect(brokenLines("fender lip", -9, 14, 2).length).toBe(2);
    const [{ name, text }] = setups as [(typeof setups)[0]];
    const { front } = picturesOf(comparisonOf(text, name, 0));
    const points = front.pictured.flatMap(({ drawing }) => framePoints(drawing, true));
    const frame = drawingFrame(points, true, { width: 0, height: 0 });
    expect(frame.names).toBe(drawingFrame(points, true, { width: 280, height: 2000 }).names);
    expect(() => pictureLayout("front", front.pictured, front.body, frame, { units: "in" })).not.toThrow();
  });

  it("names tire, wheel, hub face, ball joint line and floor on every front picture", () => {
    for (const { name, text } of setups) {
      const { front } = picturesOf(comparisonOf(text, name, 0));
      const points = front.pictured.flatMap(({ drawing }) => framePoints(drawing, true));
      const frame = drawingFrame(points, true, { width: 280, height: 200 });
      const { names } = pictureLayout("front", front.pictured, front.body, frame, { units: "in" });
      const told = names.map(({ lines }) => lines.join(" "));
      expect(told).toEqual(expect.arrayContaining(["tire", "wheel", "hub face", "ball joint line", "floor"]));
    }
  });
});

describe("a picture beside the slider of hub faces", () => {
  const size = { width: 420, height: 430 };
  const frameOf = (
    { pictured }: PictureContent,
    around: ReturnType<typeof framePoints>,
    view: "front" | "above",
  ) =>
    drawingFrame(
      [...pictured.flatMap(({ drawing }) => framePoints(drawing, view === "front")), ...around],
      view === "front",
      size,
    );

  it.each(setups)("keeps its scale and its place on $name as the slider goes", ({ name, text }) => {
    const [travel = 0] = truckFrom(text, name, null).setup.stances.map((one) => one.travel);
    const comparison = comparisonOf(text, name, travel);
    const { slider, second } = comparison;
    if (!slider || !second) return;
    const still = picturesOf(comparison);
    const heldFront = frontAround(still.front, slider);
    const front = frameOf(still.front, heldFront, "front");
    const above = frameOf(still.above, steeredAround(comparison, still), "above");
    const { least, most, step } = slider;
    for (let i = 0; i <= 4; i++) {
      const hubFace = (least + ((most - least) * i) / 4) * step;
      const tried = withHubFace(second.truck, hubFace);
      if (!tried.ok) throw new Error(tried.issues[0]!.mend);
      const moved = { ...comparison, second: { ...second, truck: tried.value } };
      const pictures = picturesOf(moved);
      const now = {
        front: frameOf(pictures.front, heldFront, "front"),
        above: frameOf(pictures.above, steeredAround(moved, pictures), "above"),
      };
      // A mark that leads to a part past the wheels may take some room.
      expect(now.front.perPx / front.perPx, `${hubFace}`).toBeCloseTo(1, 2);
      expect(now.above.perPx / above.perPx, `${hubFace}`).toBeCloseTo(1, 2);
    }
  });

  it.each(setups)("holds the wheel of $name at either end of the slider", ({ name, text }) => {
    const comparison = comparisonOf(text, name, 0);
    const { slider, second } = comparison;
    if (!slider || !second) return;
    const { pictured } = picturesOf(comparison).front;
    const drawn = pictured.find(({ letter }) => letter === "B")!;
    for (const at of [slider.least, slider.most]) {
      const tried = withHubFace(second.truck, at * slider.step);
      if (!tried.ok) throw new Error(tried.issues[0]!.mend);
      const there = picturesOf({ ...comparison, second: { ...second, truck: tried.value } }).front.pictured;
      const edge = there.find(({ letter }) => letter === "B")!.drawing.outline;
      const slid = slidOutline(drawn.drawing, drawn.hubFace, at * slider.step);
      const ends = (points: typeof edge) =>
        [0, 1].flatMap((k) => {
          const all = points.map((point) => point[k]!);
          return [Math.min(...all), Math.max(...all)];
        });
      ends(slid).forEach((end, i) => {
        expect(end).toBeCloseTo(ends(edge)[i]!, 3);
      });
    }
  });
});

describe("the room that letters take", () => {
  it("is no less than Helvetica's", () => {
    // Adobe Font Metrics of Helvetica and Helvetica-Bold, thousandths of an em (from memory).
    const regular = {
      a: 556,
      e: 556,
      i: 222,
      m: 833,
      o: 556,
      r: 333,
      t: 278,
      w: 722,
      " ": 278,
      5: 556,
      W: 944,
    };
    const bold = { a: 556, e: 556, i: 278, m: 889, o: 611, r: 389, t: 333, w: 778, " ": 278, 5: 556, W: 944 };
    for (const [letter, width] of Object.entries(regular))
      expect(lineRoom(letter, 1), letter).toBeGreaterThanOrEqual(width / 1000);
    for (const [letter, width] of Object.entries(bold))
      expect(lineRoom(letter, 1, true), letter).toBeGreaterThanOrEqual(width / 1000);
  });

  it("breaks between words, in one that is too wide, and says what it leaves out", () => {
    const broken = (text: string) => brokenLines(text, 66, FONT.name, 2);
    expect(broken("ball joint line")).toEqual(["ball joint", "line"]);
    expect(broken("crossmember")).toEqual(["crossme-", "mber"]);
    expect(broken("a name that goes on and on").at(-1)).toMatch(/…$/);
    for (const text of ["crossmember of the front end", "W".repeat(40), "ii ".repeat(30)])
      for (const line of broken(text)) expect(lineRoom(line, FONT.name)).toBeLessThanOrEqual(66);
  });
});
