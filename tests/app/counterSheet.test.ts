import { describe, expect, it } from "vitest";
import { truckAnswer } from "../../src/app/show/counter/whatIf.ts";
import { readSheetFields, sheetFieldsIn } from "../../src/app/show/shop/sheetFields.ts";
import { type Truck, truckOf } from "../../src/app/state/truck.ts";
import { type SteerLimits, steerLimits } from "../../src/studies/map/steerLimits.ts";
import { type Stop, wheelStops } from "../../src/studies/map/stop.ts";
import { checkClearance } from "../../src/studies/reports/check.ts";
import { sheetRows, wheelText } from "../../src/studies/wording/sheetRows.ts";
import { steerText, turnFacts } from "../../src/studies/wording/sheetTexts.ts";
import { exampleText } from "./exampleText.ts";
import { memoryStore } from "./memoryStore.ts";

const FORMAT = { units: "in" } as const;

function truck(variant: string | null): Truck {
  const made = truckOf(exampleText, "test.json", variant);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

describe("the sheet's table", () => {
  const both = [truck(null), truck("narrow")];
  const { stances } = both[0]!.setup;
  const rowOf = (rows: ReturnType<typeof sheetRows>, label: string) =>
    rows.find((row) => row.label.startsWith(label))?.cells.map(({ text }) => text);

  it("says the change from the first truck, and what is still being worked out", () => {
    const rows = sheetRows(
      both.map((one) => ({ truck: one, answer: truckAnswer(null, null), doubts: [] })),
      stances,
      FORMAT,
    );
    expect(rowOf(rows, "Hub-face distance")).toEqual(["6 1/8 in", "5 5/8 in"]);
    // The difference is told once, in the sentence.
    expect(rowOf(rows, "Half track")![1]).toMatch(/^[\d /]+ in$/);
    expect(rowOf(rows, "Nearest")).toEqual(["checking…", "checking…"]);
    expect(rowOf(rows, "Steers, aired out")).toEqual(["checking…", "checking…"]);
    // 8 in rim, half an inch of flange, as typed: 4 1/2 in.
    expect(wheelText(both[0]!.setup, FORMAT)).toBe("P235/70R15 on 15 × 8 in, backspacing 4 1/2 in");
  });

  it("tells the worst place with its state, and how far it steers at each height", () => {
    const [wide] = both;
    const report = checkClearance(wide!.model)!;
    const steering = steerLimits(
      wide!.model,
      stances.map(({ travel }) => travel),
    )!;
    const rows = sheetRows(
      [
        {
          truck: wide!,
          answer: { report, steering, heights: stances.map(() => null), failure: null },
          doubts: [],
        },
      ],
      stances,
      FORMAT,
    );
    const worst = rows.find(({ label }) => label.startsWith("Nearest"))!.cells[0]!;
    expect(worst.word).toBe(report.verdict);
    expect(worst.text).toContain(report.worst!.part);
    expect(worst.text).toMatch(/both sides, at .*, (steered|with the wheels)/);
    expect(rowOf(rows, "Steers, aired out")![0]).toBe(
      steerText(turnFacts(steering[0]!, null, wide!.model, FORMAT), wide!.model, FORMAT),
    );
    expect(rows.flatMap(({ cells }) => cells.map(({ text }) => text)).join()).not.toMatch(/safe/i);
  });

  it("says to which angle it steers before something touches", () => {
    const { model } = truck(null);
    const end = (at: number): Stop => ({ stop: "end", at });
    const lip: Stop = { stop: "touch", at: -0.5, side: "right", part: "lip", gap: 0, point: [0, 0, 0] };
    const turn = (left: Stop, right: Stop, way: 1 | -1) => {
      const touch = wheelStops(left, right, way);
      return { touch, allowance: touch };
    };
    const told = (right: Stop): SteerLimits => ({
      ok: true,
      travel: 0,
      leftTurn: turn(end(1), end(1), 1),
      rightTurn: turn(end(-1), right, -1),
    });
    const text = (right: Stop) => steerText(turnFacts(told(right), null, model, FORMAT), model, FORMAT);
    expect(text(end(-1))).toBe("lock to lock");
    expect(text(lip)).toMatch(/^left to the lock; right to \d+°, where the lip touches$/);
  });
});

describe("what the shop writes on its sheets", () => {
  it("is kept, and comes back", async () => {
    const box = memoryStore();
    const first = sheetFieldsIn(box);
    first.change({ shop: "Marrow Lane" });
    first.change({ customer: "J. Doe" });
    await first.written();
    const second = sheetFieldsIn(box);
    await second.written();
    expect(second.store.getState()).toEqual({
      shop: "Marrow Lane",
      customer: "J. Doe",
      truck: "",
      logo: "",
      wheels: "",
    });
  });

  it("stands when it was typed before the storage answered, beside what was kept", async () => {
    const box = memoryStore();
    const first = sheetFieldsIn(box);
    first.change({ shop: "Old name", truck: "blue" });
    await first.written();
    const second = sheetFieldsIn(box);
    second.change({ shop: "New name" });
    await second.written();
    expect(second.store.getState()).toMatchObject({ shop: "New name", truck: "blue" });
  });

  it("lasts as long as the page where the browser keeps nothing", async () => {
    const refuse = () => Promise.reject(new Error("no storage"));
    const fields = sheetFieldsIn({
      ...{ get: refuse, put: refuse, update: refuse, remove: refuse, keys: refuse },
      putNow: () => false,
    });
    fields.change({ shop: "Marrow Lane" });
    await fields.written();
    expect(fields.store.getState().shop).toBe("Marrow Lane");
  });

  it("takes no logo that was not made here", () => {
    expect(readSheetFields({ logo: "https://example.org/logo.png", shop: 5 })).toEqual({
      ...{ shop: "", customer: "", truck: "", logo: "", wheels: "" },
    });
    expect(readSheetFields(null).logo).toBe("");
    expect(readSheetFields({ logo: "data:image/png;base64,AAAA" }).logo).toBe("data:image/png;base64,AAAA");
  });
});
