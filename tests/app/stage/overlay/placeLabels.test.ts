import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { labelKeeper } from "../../../../src/app/stage/overlay/labelKeeper.ts";
import { doCross, placeLabels } from "../../../../src/app/stage/overlay/placeLabels.ts";

const HEIGHT = 20;
const PHONE = { width: 364, height: 260 };

const place = fc.record({ x: fc.integer({ min: 0, max: 364 }), y: fc.integer({ min: 0, max: 260 }) });

describe("labels on the picture", () => {
  it("stand up and outward of their marks", () => {
    const [left, right] = placeLabels(
      [
        { x: 200, y: 200 },
        { x: 800, y: 200 },
      ],
      [90, 90],
      { width: 1000, height: 400 },
    );
    expect(left!.x).toBeLessThan(200);
    expect(right!.x).toBeGreaterThan(800);
    expect(left!.y).toBeLessThan(200);
  });

  it("stay inside a phone's picture, cover neither each other nor a handle, and cross no leader, wherever marks are", () => {
    let shown = 0;
    let asked = 0;
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 1, maxLength: 6 }),
        fc.array(place, { maxLength: 8 }),
        (marks, handles) => {
          const labels = placeLabels(
            marks,
            marks.map(() => 100),
            { ...PHONE, handles },
          );
          asked += marks.length;
          const seen = labels.flatMap((at, i) => (at ? [{ at, mark: marks[i]! }] : []));
          shown += seen.length;
          for (const [i, { at: a, mark }] of seen.entries()) {
            expect(a.x - 50).toBeGreaterThanOrEqual(0);
            expect(a.x + 50).toBeLessThanOrEqual(PHONE.width);
            expect(a.y - 0.5 * HEIGHT).toBeGreaterThanOrEqual(0);
            expect(a.y + 0.5 * HEIGHT).toBeLessThanOrEqual(PHONE.height);
            for (const handle of handles)
              expect(Math.abs(a.x - handle.x) < 50 && Math.abs(a.y - handle.y) < 0.5 * HEIGHT).toBe(false);
            for (const { at: b, mark: other } of seen.slice(i + 1)) {
              expect(Math.abs(a.x - b.x) >= 100 || Math.abs(a.y - b.y) >= HEIGHT).toBe(true);
              expect(doCross(mark, a, other, b)).toBe(false);
            }
          }
        },
      ),
      { seed: 1955, numRuns: 500 },
    );
    // Room for most: a mark goes without a label only where it is crowded.
    expect(shown / asked).toBeGreaterThan(0.9);
  });

  it("keep off a mark that another is led to, and off its arms, and stand on one only where there is no other place", () => {
    const mark = { x: 400, y: 200 };
    const room = { width: 1000, height: 400 };
    const [wanted] = placeLabels([mark], [90], room);
    for (const [x, y] of [
      [0, 0],
      [52, 0],
      [-52, 18],
    ] as const) {
      const other = { x: wanted!.x + x, y: wanted!.y + y };
      const marks = [mark, other];
      const [moved] = placeLabels([mark], [90], { ...room, marks });
      for (const one of marks)
        expect(Math.abs(moved!.x - one.x) >= 58 || Math.abs(moved!.y - one.y) >= 23).toBe(true);
    }
    const everywhere = Array.from({ length: 1000 }, (_, i) => ({
      x: 20 * (i % 50),
      y: 20 * Math.floor(i / 50),
    }));
    expect(placeLabels([mark], [90], { ...room, marks: everywhere })).toEqual([wanted]);
  });

  it("lie on little that is better seen, near or far, and stand there while it is moved under them", () => {
    const mark = { x: 500, y: 300 };
    const room = { width: 1000, height: 600 };
    const onDisk = (radius: number) => (at: { x: number; y: number }) =>
      Math.hypot(at.x - mark.x, at.y - mark.y) < radius ? 1 : 0;
    const [first] = placeLabels([mark], [90], room);
    expect(placeLabels([mark], [90], { ...room, covers: onDisk(30) })).toEqual([first]);
    const [off] = placeLabels([mark], [90], { ...room, covers: onDisk(150) });
    expect(Math.hypot(off!.x - mark.x, off!.y - mark.y)).toBeGreaterThanOrEqual(150);
    // Where all is covered, the first place is as good as any.
    expect(placeLabels([mark], [90], { ...room, covers: () => 1 })).toEqual([first]);
    expect(placeLabels([mark], [90], { ...room, covers: () => 1 }, [off!])).toEqual([off]);
  });

  it("are led under no label that stood before and over no handle, while there is another way", () => {
    const mark = { x: 400, y: 200 };
    const room = { width: 1000, height: 400 };
    const [first] = placeLabels([mark], [90], room);
    const between = { x: 0.5 * (mark.x + first!.x), y: 0.5 * (mark.y + first!.y) };
    const label = { x: between.x - 4, y: between.y, width: 8 };
    const [past] = placeLabels([mark], [90], { ...room, taken: [label] });
    expect(doCross(mark, past!, { x: label.x, y: label.y - 9 }, { x: label.x, y: label.y + 9 })).toBe(false);
    expect(placeLabels([mark], [90], { ...room, handles: [between] })).not.toEqual([first]);
    // Kept where it stood: what comes under its leader while it is dragged does not move it.
    expect(placeLabels([mark], [90], { ...room, handles: [between] }, [first!])).toEqual([first]);
    const around = Array.from({ length: 36 }, (_, i) => {
      const turn = (i * Math.PI) / 18;
      return { x: mark.x + 20 * Math.cos(turn), y: mark.y + 20 * Math.sin(turn) };
    });
    expect(placeLabels([mark], [90], { ...room, handles: around })[0]).not.toBeNull();
  });

  it("are led over as few handles as there is a way, not across all of them, where each way is over some", () => {
    const mark = { x: 182, y: 130 };
    // A ring of handles about the mark, close on one side, in a phone's picture.
    const turned = (degrees: number) => (degrees * Math.PI) / 180;
    const at = (degrees: number, far: number) => ({
      x: mark.x + far * Math.cos(turned(degrees)),
      y: mark.y + far * Math.sin(turned(degrees)),
    });
    const ring = Array.from({ length: 36 }, (_, i) => at(10 * i, 22));
    const second = Array.from({ length: 30 }, (_, i) => at(30 + 10 * i, 36));
    const [label] = placeLabels([mark], [60], { ...PHONE, handles: [...ring, ...second] });
    const way = Math.atan2(label!.y - mark.y, label!.x - mark.x) * (180 / Math.PI);
    // Out through the gap of the second ring.
    expect(Math.abs(way)).toBeLessThan(30);
  });

  it("have room for the first given before any other, and always for one alone", () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 6 }), (marks) => {
        const labels = placeLabels(
          marks,
          marks.map(() => 200),
          PHONE,
        );
        expect(labels[0]).not.toBeNull();
        const [alone] = placeLabels([marks[0]!], [200], PHONE);
        expect(labels[0]).toEqual(alone);
      }),
      { seed: 1955, numRuns: 300 },
    );
  });

  it("stay where they stood while there is room, and the leader is not overlong", () => {
    const before = { x: 460, y: 250 };
    const mark = { x: 400, y: 200 };
    const room = { width: 1000, height: 400 };
    expect(placeLabels([mark], [90], room, [before])).toEqual([before]);
    const [moved] = placeLabels([mark], [90], { ...room, handles: [before] }, [before]);
    expect(moved).toEqual(placeLabels([mark], [90], room)[0]);
    expect(placeLabels([{ x: 60, y: 20 }], [90], room, [before])).not.toEqual([before]);
  });

  it("come back where they stood when they were not told for a moment, and another of the same role stands there too", () => {
    const place = labelKeeper();
    const room = { width: 1000, height: 400 };
    const eye = [{ x: 0, y: 0 }];
    const lip = { key: "left fender lip", role: "worst", mark: { x: 400, y: 200 }, width: 90 };
    const [first] = place([lip], room, eye);
    place([], room, eye);
    const moved = { ...lip, mark: { x: 440, y: 230 } };
    expect(place([moved], room, eye)).toEqual([first]);
    expect(place([{ ...moved, key: "right frame rail" }], room, eye)).toEqual([first]);
    // Without the role, and seen from elsewhere, it gets a place of its own.
    expect(place([{ key: "left caliper", mark: moved.mark, width: 90 }], room, eye)).not.toEqual([first]);
    place([], room, [{ x: 5, y: 0 }]);
    expect(place([moved], room, [{ x: 5, y: 0 }])).not.toEqual([first]);
  });

  it("goes with its mark as a hand turns the picture, and finds a place anew in another view", () => {
    const place = labelKeeper();
    const room = { width: 1000, height: 400 };
    const eye = (x: number) => [{ x, y: 0 }];
    const lip = { key: "left fender lip", mark: { x: 520, y: 30 }, width: 90 };
    // Under the picture's edge there is no room above its mark.
    const [low] = place([lip], room, eye(0), "side");
    expect(low!.y).toBeGreaterThanOrEqual(14);
    const turned = { ...lip, mark: { x: 560, y: 200 } };
    const [kept] = place([turned], room, eye(5), "side");
    expect(kept).toEqual({ x: 560 + low!.x - 520, y: 200 + low!.y - 30 });
    const [anew] = place([turned], room, eye(5), "front");
    expect(anew).not.toEqual(kept);
    expect(anew).toEqual(labelKeeper()([turned], room, eye(5), "front")[0]);
  });
});
