import { describe, expect, it } from "vitest";
import { length, sub, type Vec3 } from "../../src/geometry/vec.ts";
import { type AssemblyIssue, assembleFrontEnd } from "../../src/suspension/frontEnd.ts";
import type { FrontEndInput } from "../../src/suspension/inputs.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { drawnTrucks, inputOf } from "./drawnTrucks.ts";
import { assembled, wishbone, wishbonePoints } from "./trucks.ts";

function issueOf(input: FrontEndInput): AssemblyIssue {
  const result = assembleFrontEnd(input);
  if (result.ok) throw new Error("expected an issue");
  return result.issue;
}

const withSpan = (span: number): FrontEndInput => ({ ...wishbone, knuckle: { ...wishbone.knuckle, span } });

describe("a knuckle on a truck", () => {
  it("stands at rest on the very points it was drawn with", () => {
    for (const [input, points] of [
      [wishbone, wishbonePoints] as const,
      ...drawnTrucks.map((truck) => [inputOf(truck), truck] as const),
    ]) {
      const rest = solvePose(assembled(input), 0, 0);
      if (!rest.ok) throw new Error("rest must be reachable");
      for (const joint of ["upperBallJoint", "lowerBallJoint", "tieRodOuter", "wheelCenter"] as const) {
        expect(length(sub(rest.left[joint], points[joint])), joint).toBeLessThan(1e-9);
      }
    }
  });

  it("takes any span the upper arm can meet, and names the range when it cannot", () => {
    const { key, least, most } = issueOf(withSpan(2000));
    expect(key).toBe("knuckle.span");
    if (least === undefined || most === undefined) throw new Error("a length issue names its range");
    expect(assembleFrontEnd(withSpan(0.5 * (least + most))).ok).toBe(true);
    // At its ends the arm meets the knuckle, but where it is stretched out or folded the wheel need not rise with it.
    for (const span of [least + 1e-6, most - 1e-6]) {
      const result = assembleFrontEnd(withSpan(span));
      if (!result.ok) expect(result.issue.code).toBe("rise");
    }
    for (const span of [least - 1e-6, most + 1e-6, 1, Number.NaN]) {
      expect(issueOf(withSpan(span)).code).toBe("span");
    }
  });

  it("whose wheel does not rise with its lower arm does not stand as measured", () => {
    // A wheel center that far inboard lies past the point about which arms and knuckle turn, and sinks.
    const { code, key } = issueOf({ ...wishbone, wheelOffset: 8000 });
    expect([code, key]).toEqual(["rise", "truck.lowerArm.ballJoint"]);
  });

  it("finds that range where the upper arm's circle is nearest and farthest (dense sampling)", () => {
    const { least, most } = issueOf(withSpan(2000));
    const { frontPivot, rearPivot, ballJoint } = wishbone.upperArm;
    // The upper ball joint's circle by turning it about the pivot line with Rodrigues' formula.
    const axis = sub(rearPivot, frontPivot);
    const l = length(axis);
    const [ux, uy, uz] = axis.map((c) => c / l) as unknown as Vec3;
    const [vx, vy, vz] = sub(ballJoint, frontPivot);
    let [near, far] = [Number.POSITIVE_INFINITY, 0];
    for (let i = 0; i < 20_000; i++) {
      const [c, s] = [Math.cos((i / 20_000) * 2 * Math.PI), Math.sin((i / 20_000) * 2 * Math.PI)];
      const along = (ux * vx + uy * vy + uz * vz) * (1 - c);
      const turned: Vec3 = [
        vx * c + (uy * vz - uz * vy) * s + ux * along,
        vy * c + (uz * vx - ux * vz) * s + uy * along,
        vz * c + (ux * vy - uy * vx) * s + uz * along,
      ];
      const joint: Vec3 = [frontPivot[0] + turned[0], frontPivot[1] + turned[1], frontPivot[2] + turned[2]];
      const d = length(sub(joint, wishbone.lowerArm.ballJoint));
      near = Math.min(near, d);
      far = Math.max(far, d);
    }
    // Sampling can only miss the extremes, by less than a step squared.
    expect(near - least!).toBeGreaterThan(-1e-9);
    expect(near - least!).toBeLessThan(1e-3);
    expect(most! - far).toBeGreaterThan(-1e-9);
    expect(most! - far).toBeLessThan(1e-3);
  });
});

describe("parts that do not go together name the key", () => {
  const arm = (key: "upperArm" | "lowerArm", ballJoint: Vec3): FrontEndInput => ({
    ...wishbone,
    [key]: { frontPivot: [150, 300, 300], rearPivot: [-150, 300, 300], ballJoint },
  });

  it("a lower arm hanging straight down cannot lift the wheel", () => {
    expect(issueOf(arm("lowerArm", [0, 300, 100])).key).toBe("truck.lowerArm.ballJoint");
  });

  it("an upper arm in line with the lower ball joint could fold either way", () => {
    // Lower ball joint at (10, 700, 230); the arm points from its pivot line straight away from it.
    expect(issueOf(arm("upperArm", [10, 500, 265])).key).toBe("truck.upperArm.ballJoint");
  });

  it("a tie rod that points at the steering axis cannot steer", () => {
    // Inner end, outer end and lower ball joint in one line in the plane of the steering axis.
    const outer = wishbonePoints.tieRodOuter;
    const axisPoint = wishbonePoints.lowerBallJoint;
    const innerEnd: Vec3 = [
      outer[0] + (outer[0] - axisPoint[0]),
      outer[1] + (outer[1] - axisPoint[1]),
      outer[2] + (outer[2] - axisPoint[2]),
    ];
    expect(issueOf({ ...wishbone, steering: { type: "rack", innerEnd, stroke: 50 } }).code).toBe("tieRod");
  });

  it("a toe past what the leaned axis allows", () => {
    const lying: FrontEndInput = { ...wishbone, knuckle: { ...wishbone.knuckle, pinAngle: 1.5 }, toe: 1.2 };
    expect(issueOf(lying).key).toBe("alignment.toe");
  });

  it("a pitman arm that stands sideways, and an idler in line with the center link", () => {
    const pitman = drawnTrucks.find(({ steering }) => steering.type === "pitman")!;
    const input = inputOf(pitman);
    if (input.steering.type !== "pitman") throw new Error("expected pitman-arm steering");
    const { steering } = input;
    const sideways = { ...steering.pitman, pivot: [-163, 200, 291] as Vec3, end: [-163, 322, 272] as Vec3 };
    expect(issueOf({ ...input, steering: { ...steering, pitman: sideways } }).key).toBe("truck.steering");
    const inLine = { ...steering.idler, pivot: [-163, -316, 289] as Vec3, end: [-163, -200, 272] as Vec3 };
    const straight = { ...steering.pitman, pivot: [-22, 322, 291] as Vec3, end: [-163, 322, 272] as Vec3 };
    expect(issueOf({ ...input, steering: { ...steering, pitman: straight, idler: inLine } }).key).toBe(
      "truck.steering",
    );
  });

  it("a center link of a millimeter or less, taken for a slip of the pen", () => {
    const input = inputOf(drawnTrucks.find(({ steering }) => steering.type === "pitman")!);
    const { steering } = input;
    if (steering.type !== "pitman") throw new Error("expected pitman-arm steering");
    const keyAt = (long: number) => {
      const [x, y, z] = steering.pitman.end;
      const idler = { ...steering.idler, end: [x, y - long, z] as Vec3 };
      const made = assembleFrontEnd({ ...input, steering: { ...steering, idler } });
      return made.ok ? null : made.issue.key;
    };
    expect([0, 0.5, 1].map(keyAt)).toEqual(new Array(3).fill("truck.steering.idler.end"));
    expect(keyAt(1.5)).not.toBe("truck.steering.idler.end");
  });
});
