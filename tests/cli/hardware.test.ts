import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../studies/demoModel.ts";
import { captured, capturedJson } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

const folder = setupFolder();
const narrow = { knuckle: { hubFace: "5 5/16" } };
const caliper = { frame: "hub", min: [-6, -3.5, -2], max: [-3, -1, 2] };
const file = (name: string, patch: object) => folder.write(name, demoDocument({ ...lipAlone(), ...patch }));
const plain = file("plain.json", narrow);
const moving = file("moving.json", { ...narrow, hardware: { rotor: {}, caliper } });
const tight = file("tight.json", { knuckle: { hubFace: "4 3/4" }, hardware: { rotor: {} } });
const rubbing = file("rubbing.json", { knuckle: { hubFace: "4 1/4" }, hardware: { rotor: {} } });

type Entry = {
  part: string;
  side: string;
  gap: number;
  bound: number;
  travel: number;
  steer: number;
  ride?: string;
};

describe("check with moving parts", () => {
  const { code, document } = capturedJson(["check", moving]);
  const entries: Entry[] = document.parts;

  it("tells of body parts first, with the very numbers they have alone, then of what moves", () => {
    const alone = capturedJson(["check", plain]).document;
    expect(entries.slice(0, 2)).toEqual(alone.parts);
    expect(entries.slice(2).map((e) => `${e.side} ${e.part}`)).toEqual(
      ["left", "right"].flatMap((side) =>
        [
          "upper arm",
          "lower arm",
          "tie rod",
          "tie rod end",
          "steering arm",
          "upper ball joint",
          "lower ball joint",
          "knuckle",
          "rotor to lower ball joint",
          "rotor to lower arm",
          "rotor to upper ball joint",
          "rotor to upper arm",
          "rotor to steering arm",
          "rotor to tie rod end",
          "rotor to tie rod",
          "caliper to barrel",
          "caliper to wheel center",
        ].map((part) => `${side} ${part}`),
      ),
    );
    expect(code).toBe(0);
  });

  it("marks what rides together, whose travel and steer are 0, and only that", () => {
    for (const { part, ride, travel, steer } of entries) {
      const together =
        !/^(fender lip|upper arm|lower arm|tie rod|rotor to (lower arm|upper arm|tie rod))$/.test(part);
      expect([part, ride]).toEqual([part, together ? "together" : undefined]);
      if (together) expect([travel, steer]).toEqual([0, 0]);
    }
  });

  it("a rotor nearer its ball joint than the allowance is close, and told in plain words", () => {
    const { out, code: exit } = captured(["check", tight]);
    expect(exit).toBe(0);
    expect(out.split("\n")[1]).toBe(
      "The lower ball joint comes within 1/16 in of the rotor on both sides at every pose; you asked for 1/4 in.",
    );
    expect(out).toMatch(/^rotor to lower ball joint +left +close +1\/16 +any +any /m);
  });

  it("a rotor in its ball joint rubs, exit 1", () => {
    const { out, code: exit } = captured(["check", rubbing]);
    expect(exit).toBe(1);
    expect(out.split("\n")[1]).toMatch(
      /^The rotor rubs the lower ball joint on both sides by 7\/16 in at every pose/,
    );
  });
});

describe("pose and sweep with moving parts", () => {
  it("pose lists them after the body, the ones that ride together marked", () => {
    const { document } = capturedJson(["pose", moving, "--travel", "2", "--steer", "0.5"]);
    const gaps: Entry[] = document.gaps;
    expect(gaps.map((e) => e.part).slice(0, 4)).toEqual([
      "fender lip",
      "fender lip",
      "upper arm",
      "lower arm",
    ]);
    expect(gaps.find((e) => e.part === "caliper to barrel")!.ride).toBe("together");
    expect(gaps.find((e) => e.part === "upper arm")).not.toHaveProperty("ride");
  });

  it("no pose is worse than check's bound for it", () => {
    const bounds = new Map<string, number>(
      capturedJson(["check", moving]).document.parts.map((e: Entry) => [`${e.side} ${e.part}`, e.bound]),
    );
    const at = ["-3.5,-1", "-2,0.8", "0,0", "2,-0.6", "3.25,1"].flatMap((pose) => ["--at", pose]);
    const poses: { gaps: Entry[] }[] = capturedJson(["pose", moving, ...at]).document.poses;
    expect(poses).toHaveLength(5);
    for (const { gaps } of poses)
      for (const { side, part, gap } of gaps)
        expect(gap).toBeGreaterThanOrEqual(bounds.get(`${side} ${part}`)! - 1e-7);
  });

  it("a sweep's header has a column for each gap of its rows", () => {
    const lines = captured(["sweep", moving, "--csv"]).out.trim().split("\n");
    const columns = lines.map((line) => line.split(",").length);
    expect(new Set(columns).size).toBe(1);
    expect(lines[0]).toContain("left gap to rotor to lower ball joint (in)");
  });
});
