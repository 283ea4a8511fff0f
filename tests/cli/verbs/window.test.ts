import { describe, expect, it } from "vitest";
import { demoDocument, demoModel, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { documentInMm } from "../documentInMm.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const truck = "shared/half-ton-on-air.json";
/** The same truck with nothing but its fender lip: quick to look over. */
const lip = folder.write("lip.json", demoDocument(lipAlone()));
const hubFace = ["--field", "knuckle.hubFace"];

describe("window", () => {
  const { code, document } = capturedJson(["window", truck, ...hubFace]);

  it("answers in the file's units, with what sets each end, and ends in 1 where the file's value does not fit", () => {
    expect(code).toBe(1);
    expect(document).toMatchObject({ units: "in", field: "knuckle.hubFace", now: 6.3125, between: "proven" });
    expect(document.tolerance).toBeCloseTo(0.1 / 25.4, 12);
    expect(document.fits).toHaveLength(1);
    const [fit] = document.fits;
    expect(fit.fromSetBy).toMatchObject({
      part: "rotor to lower ball joint",
      side: "left",
      ride: "together",
    });
    expect(fit.toSetBy).toMatchObject({ part: "fender lip", side: "left" });
    expect(fit.toSetBy.travel).toBeCloseTo(3.5, 3);
    // Pin 5 3/8 high at 8.5 degrees; rotor 1 thick, 1 3/4 inboard; ball 1 1/8; allowance 1/4.
    const byHand = 5.375 * Math.sin((8.5 * Math.PI) / 180) + 1.75 + 1 + 1.125 + 0.25;
    expect(fit.from).toBeGreaterThanOrEqual(byHand - 1e-9);
    expect(fit.from).toBeLessThan(byHand + document.tolerance);
  });

  it("ends in 0 with a variant that fits", () => {
    const variant = capturedJson([
      "window",
      truck,
      ...hubFace,
      "--variant",
      "narrow hub face",
      "--from",
      "5",
    ]);
    expect([variant.code, variant.document.now]).toEqual([0, 5.3125]);
    expect(variant.document.fits[0].fromSetBy).toEqual({ range: true });
  });

  it("is the same of the same truck in millimeters", () => {
    const inMm = folder.write("mm.json", documentInMm(demoModel(lipAlone()).setup));
    const mm = capturedJson(["window", inMm, ...hubFace, "--from", "120", "--to", "150"]).document;
    const inches = folder.write("in.json", demoDocument(lipAlone()));
    const asked = ["--from", "120 mm", "--to", "150 mm"];
    const same = capturedJson(["window", inches, ...hubFace, ...asked]).document;
    expect(mm.units).toBe("mm");
    expect(mm.fits.length).toBe(same.fits.length);
    mm.fits.forEach((fit: { from: number; to: number }, i: number) => {
      expect(fit.from).toBeCloseTo(same.fits[i].from * 25.4, 6);
      expect(fit.to).toBeCloseTo(same.fits[i].to * 25.4, 6);
    });
  });

  it("takes and tells angles in degrees", () => {
    const { document: angle } = capturedJson([
      ...["window", lip, "--field", "knuckle.pinAngle", "--variant", "narrow hub face"],
      ...["--from", "8", "--to", "9", "--tolerance", "0.1"],
    ]);
    expect(angle).toMatchObject({ now: 8.5, between: "sampled" });
    expect(angle.from).toBeCloseTo(8, 12);
    expect(angle.tolerance).toBeCloseTo(0.1, 12);
  });

  it("of an empty one says what opens it", () => {
    const { document: empty } = capturedJson(["window", lip, ...hubFace, "--from", "6", "--to", "6 1/2"]);
    expect(empty.fits).toEqual([]);
    expect(empty.closedBy[0]).toMatchObject({ part: "fender lip", unmoved: false });
    expect(Object.keys(empty.opens)).toEqual(["field", "from", "to", "at"]);
    const { out } = captured(["window", lip, ...hubFace, "--from", "6", "--to", "6 1/2"]);
    expect(out).toContain("no value from 6 in to 6 1/2 in fits");
    expect(out).toContain("The smallest single change found that makes room: ");
  });

  it("says when the budget ended it", () => {
    const { document: cut } = capturedJson(["window", truck, ...hubFace, "--budget", "0.001"]);
    expect(cut.cutShort).toBe(true);
    expect(captured(["window", truck, ...hubFace, "--budget", "0.001"]).out).toContain(
      "Give it more with --budget",
    );
  });

  it.each([
    [["--field", "knuckle.hubFase"], 'did you mean "knuckle.hubFace"?'],
    [["--field", "name"], "holds no single length or angle"],
    [["--field", "tire.size"], 'name "tire.sectionWidth"'],
    [["--field", "knuckle..x"], "there is no such field"],
    [[...hubFace, "--from", "6", "--to", "5"], "must be less than --to"],
    [[...hubFace, "--from", "-1"], "more or less than the file may hold"],
    [[...hubFace, "--from", "wide"], "--from"],
    [[...hubFace, "--tolerance", "0"], "--tolerance"],
    [[], "--field"],
  ] as const)("%j is refused with the mend", (options, mend) => {
    const { code: refused, error, out } = captured(["window", truck, ...options]);
    expect([refused, out]).toEqual([2, ""]);
    expect(error).toContain(mend);
    expect(error.trim().split("\n")).toHaveLength(1);
  });
});
