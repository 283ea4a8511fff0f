import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { bodyPointWords } from "../../../src/studies/wording/bodyPointWords.ts";
import { exampleDocument } from "../../setup/fixtures.ts";

const INCHES = { units: "in", fraction: 16 } as const;

/** What each point of a path of these is called. @param points x, y and z, in */
function named(points: readonly (readonly [number, number, number])[], fromExample?: object): string[] {
  const document = exampleDocument();
  document.truck.body = [{ name: "fender lip", kind: "path", radius: "1/8", points }];
  const read = resolveSetup(document, "truck.json");
  if (!read.ok) throw new Error(read.issues[0]!.mend);
  const speech = { format: INCHES, document: { ...document, fromExample }, setup: read.value };
  return points.map((_, at) => bodyPointWords("fender lip", at, speech));
}

describe("a point of the body", () => {
  it("is told by where it stands along the truck", () => {
    expect(
      named([
        [17.125, 32.5, 16],
        [0.01, 33, 31.5],
        [-5.375, 32.5, 16],
      ]),
    ).toEqual([
      "fender lip 17 1/8 in ahead of the axle",
      "fender lip over the axle",
      "fender lip 5 3/8 in behind the axle",
    ]);
  });

  it("is told from another that reads the same by its number", () => {
    expect(
      named([
        [4, 32.5, 16],
        [4.01, 33, 31.5],
        [-4, 32.5, 16],
      ]),
    ).toEqual([
      "fender lip 4 in ahead of the axle, point 1",
      "fender lip 4 in ahead of the axle, point 2",
      "fender lip 4 in behind the axle",
    ]);
  });

  it("is told as the worksheet tells it where it is of the assumed layout, and by its number where it stands nowhere", () => {
    const stations = named(
      [
        [17, 32.5, 16],
        [12, 33, 31.5],
      ],
      { of: "assumed layout" },
    );
    expect(stations[0]).toBe("fender lip at its front end");
    const setup = { truck: { body: [] } } as never;
    expect(bodyPointWords("fender lip", 3, { format: INCHES, document: {}, setup })).toBe(
      "fender lip, point 4",
    );
  });
});
