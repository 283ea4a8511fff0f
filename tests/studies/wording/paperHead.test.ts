import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { shopDrawings } from "../../../src/studies/drawings/shopDrawings.ts";
import { paperHead, paperLines } from "../../../src/studies/wording/paperHead.ts";
import { example } from "../loads/loadTruck.ts";
import { orderedDocument } from "../order/orderedTruck.ts";

const headOf = (order: object, patch: object = {}) => {
  const setup = resolveSetup(orderedDocument(order, patch), "t");
  if (!setup.ok) throw new Error(JSON.stringify(setup.issues));
  return paperHead(setup.value);
};

describe("what papers of a knuckle say of it", () => {
  it("is the order, its customer, how many, and the truck", () => {
    expect(paperLines(headOf({ customer: "Alder Lane Garage" }))).toEqual([
      "Order TS-014, Alder Lane Garage, 1 pair, left and right",
      "For Tamarack Street short bed, knuckle on order",
    ]);
    expect(headOf({ number: null, customer: null, side: "left", quantity: 3 }).order).toBe(
      "Order without a number, 3 left",
    );
  });

  it("is as ordered only while the knuckle's own numbers are the order's", () => {
    expect(headOf({}).part).toBe("drop knuckle as ordered");
    expect(headOf({}, { knuckle: { hubFace: 6 } }).part).toBe("drop knuckle, not yet as ordered");
    // A rotor to be put in yet is no other knuckle.
    expect(headOf({}, { hardware: { rotor: { thickness: 1 } } }).part).toBe("drop knuckle as ordered");
    expect(headOf({ drop: 0 }, { knuckle: { pinHeight: "2 7/8" } }).part).toBe("knuckle as ordered");
  });

  it("is as ordered only where the order tells all that makes the knuckle", () => {
    const open = "order not complete";
    for (const key of ["span", "pinHeight", "pinAngle", "steeringArm"])
      expect(headOf({ base: { [key]: null } }).part, key).toBe(`drop knuckle, ${open}`);
    expect(headOf({ base: null }).part).toBe(`drop knuckle, ${open}`);
    expect(headOf({ hubFace: null }).part).toBe(`drop knuckle, ${open}`);
    expect(headOf({ base: null, drop: null, hubFace: null }).part).toBe(`knuckle, ${open}`);
    // What is ordered and not so weighs more than what is left open.
    expect(headOf({ base: { span: null } }, { knuckle: { hubFace: 6 } }).part).toBe(
      "drop knuckle, not yet as ordered",
    );
    const leads = { knuckle: { pinLead: "1/2" } };
    expect(headOf({}, leads).part).toBe(`drop knuckle, ${open}`);
    expect(headOf({ pinLead: "1/2" }, leads).part).toBe("drop knuckle as ordered");
    expect(headOf({ pinLead: 0 }, leads).part).toBe("drop knuckle, not yet as ordered");
  });

  it("names no order where there is none", () => {
    const setup = resolveSetup(example("tubular-knuckle.json"), "t");
    if (!setup.ok) throw new Error("example");
    expect(paperHead(setup.value)).toEqual({
      part: "knuckle",
      order: "",
      truck: "For Half-ton on a tubular knuckle",
    });
  });

  it("stands on every sheet of the drawings, and no sheet is told as bolted on", () => {
    const document = example("ordered-knuckle.json");
    const setup = resolveSetup(document, "t");
    if (!setup.ok) throw new Error("example");
    const drawn = shopDrawings(setup.value, { paper: "letter", kerf: 0, angle: "third" }, "t");
    if (!drawn.ok) throw new Error("drawings");
    expect(drawn.value.pages.length).toBeGreaterThan(6);
    for (const page of drawn.value.pages) {
      const words = page.texts.map(({ text }) => text).join(" ");
      expect(words, page.title).toContain("Order TS-014, Tamarack Street short bed, 1 pair");
      expect(words).not.toContain("bolted on");
    }
    for (const { file, title } of drawn.value.files) {
      expect(file).toMatch(/^TS-014-tamarack-street-short-bed-/);
      expect(title).not.toContain("bolted on");
    }
    const list = drawn.value.pages.map(({ texts }) => texts.map(({ text }) => text).join(" "));
    expect(list.some((words) => /thread: 3\/4-16 UNF, by order TS-014\./.test(words))).toBe(true);
  });
});
