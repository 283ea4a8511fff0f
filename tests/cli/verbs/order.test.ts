import { existsSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { orderedDocument } from "../../studies/order/orderedTruck.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const example = "shared/ordered-knuckle.json";

describe("the verb order", () => {
  it("prints the sheet as a document, lengths in inches and angles in degrees", () => {
    const { code, document } = capturedJson(["order", example]);
    expect(code).toBe(0);
    expect(document).toMatchObject({
      units: "in",
      number: "TS-014",
      side: "pair",
      quantity: 1,
      knuckle: {
        base: { pinHeight: 2.875, hubFace: 6.25 },
        drop: 2.5,
        pinHeight: expect.closeTo(5.375, 9),
        hubFace: expect.closeTo(5.5, 9),
        pinAngle: expect.closeTo(8.5, 9),
        steeringArm: [-5.875, -1, 1.375].map((at) => expect.closeTo(at, 9)),
      },
      ballJoints: {
        upper: { item: "Plover 41", taper: { included: expect.closeTo(7.1527, 4), inchesPerFoot: 1.5 } },
        lower: { taper: { included: expect.closeTo(9.5273, 4) } },
      },
      brake: {
        rotorThickness: 1.25,
        rotorInboard: expect.closeTo(1.875, 9),
        bracketThread: { text: "1/2-20 UNF" },
      },
      hub: {
        boltPattern: {
          text: "5x5",
          holes: 5,
          circle: expect.closeTo(5, 9),
          betweenNeighbors: expect.closeTo(2.9389, 4),
          across: expect.closeTo(4.7553, 4),
        },
      },
      steeringArm: {
        thread: { text: "5/8-18 UNF", stressArea: expect.closeTo(0.255957, 6) },
        threadsEngaged: expect.closeTo(22.5, 9),
      },
      onTheTruck: { lowers: expect.closeTo(2.472, 3), narrows: expect.closeTo(1.107, 3) },
      differs: [],
      open: [],
    });
    expect(document.writes).toContainEqual({ field: "knuckle.hubFace", to: expect.closeTo(5.5, 9) });
  });

  it("prints a table a person reads, with its cautions and no word of safety or strength as found", () => {
    const { code, out, error } = captured(["order", example]);
    expect([code, error]).toEqual([0, ""]);
    expect(out).toMatch(/Hub-face distance +5 1\/2 in +base 6 1\/4 in; narrowed 3\/4 in/);
    expect(out).toMatch(/Stud taper +1.5 in\/ft \(7.153° included\)/);
    expect(out).toMatch(/blocks say what the order says, in all 17 fields/);
    expect(out).toMatch(/licensed, qualified people/);
    expect(out).not.toMatch(/undefined|NaN|null/);
    for (const line of out.split("\n")) expect(line).toBe(line.trimEnd());
  });

  it("the whole sheet reads as it did", async () => {
    const { out } = captured(["order", example]);
    await expect(out).toMatchFileSnapshot(join(import.meta.dirname, "orderSheet.txt"));
  });

  it("says by field where the blocks disagree, and that answers go by the blocks", () => {
    const file = folder.write("apart.json", orderedDocument({}, { knuckle: { hubFace: 6 } }));
    expect(captured(["order", file]).out).toContain(
      "knuckle.hubFace: the order says 5 1/2 in, the block 6 in; answers go by the block until the order is written.",
    );
    expect(capturedJson(["order", file]).document.differs).toEqual([
      { field: "knuckle.hubFace", order: expect.closeTo(5.5, 9), block: expect.closeTo(6, 9) },
    ]);
  });

  it("--write writes the setup with its blocks as ordered; the order is the same afterwards, and check goes by it", () => {
    const file = folder.write("apart.json", orderedDocument({}, { knuckle: { hubFace: 7 }, hardware: null }));
    const out = join(folder.path, "made.json");
    const { code, document } = capturedJson(["order", file, "--write", out]);
    expect([code, document.written]).toEqual([0, out]);
    const made = JSON.parse(readFileSync(out, "utf8"));
    expect(made.knuckle.hubFace).toBe("5 1/2");
    expect(made.order).toEqual(orderedDocument().order);
    expect(capturedJson(["order", out]).document.differs).toEqual([]);
    const parts = (checked: string) =>
      capturedJson(["check", checked]).document.parts.map(({ part }: { part: string }) => part);
    expect(parts(file)).not.toContain("caliper to barrel");
    expect(parts(out)).toContain("caliper to barrel");
  });

  it("--write with a variant writes to that variant's patch alone", () => {
    const variants = [{ name: "wider", patch: { order: { hubFace: "5 3/4" } } }];
    const file = folder.write("variant.json", orderedDocument({}, { variants }));
    const out = join(folder.path, "made variant.json");
    expect(captured(["order", file, "--variant", "wider", "--write", out]).code).toBe(0);
    const made = JSON.parse(readFileSync(out, "utf8"));
    expect(made.knuckle).toEqual(orderedDocument().knuckle);
    expect(made.variants[0].patch).toEqual({ order: { hubFace: "5 3/4" }, knuckle: { hubFace: "5 3/4" } });
  });

  it("--write never writes over what is read, nor over another's file without --force", () => {
    const file = folder.write("read.json", orderedDocument());
    const other = folder.write("other.json", "something of somebody's");
    for (const out of [file, other]) {
      const { code, error } = captured(["order", file, "--write", out]);
      expect(code).toBe(2);
      expect(error).toMatch(/--write.*(read here|--force)/);
    }
    expect(readFileSync(other, "utf8")).toBe("something of somebody's");
    expect(captured(["order", file, "--write", file, "--force"]).code).toBe(2);
    expect(captured(["order", file, "--write", other, "--force"]).code).toBe(0);
    expect(JSON.parse(readFileSync(other, "utf8")).format).toBe("wellsweep-setup");
  });

  it("--write keeps a setup beside the mesh files it names", () => {
    const scanned = JSON.parse(readFileSync("shared/scanned-fender.json", "utf8"));
    const { stance: _, ...order } = orderedDocument().order as Record<string, unknown>;
    folder.write("scanned-fender.stl", readFileSync("shared/scanned-fender.stl"));
    const file = folder.write("scanned.json", { ...scanned, order });
    const away = captured(["order", file, "--write", join(tmpdir(), "wellsweep-away.json")]);
    expect([away.code, away.error]).toEqual([
      2,
      expect.stringMatching(/"scanned-fender.stl".*into that folder/),
    ]);
    expect(existsSync(join(tmpdir(), "wellsweep-away.json"))).toBe(false);
    const beside = join(folder.path, "scanned made.json");
    expect(captured(["order", file, "--write", beside]).code).toBe(0);
    expect(captured(["order", beside]).code).toBe(0);
  });

  it("--catalog goes in place of the program's own of that kind", () => {
    const catalog = {
      format: "wellsweep-catalog",
      version: 1,
      kind: "ballJoints",
      units: "in",
      items: [
        { name: "Plover 41", taper: "1.5 in/ft", studLength: 3 },
        { name: "Plover 62", taper: "7.5°" },
      ],
    };
    const own = folder.write("own joints.json", catalog);
    const { document } = capturedJson(["order", example, "--catalog", own]);
    expect(document.ballJoints.upper.studLength).toBe(3);
    expect(document.ballJoints.lower.taper.included).toBeCloseTo(7.5, 9);
    const broken = folder.write("broken joints.json", { ...catalog, items: [{ name: "a", studLength: -1 }] });
    const refused = captured(["order", example, "--catalog", broken]);
    expect([refused.code, refused.out]).toEqual([2, ""]);
    expect(refused.error).toBe(`${broken}: items[0].studLength: -1: must be more than 0\n`);
    const missing = captured(["order", example, "--catalog", join(folder.path, "none.json")]);
    expect([missing.code, missing.error]).toEqual([
      2,
      expect.stringMatching(/none\.json: there is no such file/),
    ]);
  });

  it("of parts that do not go together prints nothing, writes nothing and says all on one line", () => {
    const file = folder.write(
      "misfit.json",
      orderedDocument({ upperBallJoint: { seat: "2 in/ft" }, wheel: { boltPattern: "5x4.75" } }),
    );
    const out = join(folder.path, "never.json");
    const { code, out: printed, error } = captured(["order", file, "--write", out]);
    expect([code, printed]).toEqual([2, ""]);
    expect(error).toMatch(
      /^\S+misfit\.json: order\.upperBallJoint\.seat: 2 in\/ft .* \(and 1 more: order\.wheel\.boltPattern\)\n$/,
    );
    expect(existsSync(out)).toBe(false);
    // Other verbs go by the blocks.
    expect(captured(["check", file]).code).toBe(0);
  });

  it("of a setup without an order says so", () => {
    const { code, error } = captured(["order", "shared/half-ton-on-air.json"]);
    expect([code, error]).toEqual([2, expect.stringMatching(/has no order block/)]);
  });
});
