import { describe, expect, it } from "vitest";
import { addressOf, hashOf, LAYERS, STATIONS } from "../../../src/app/state/address.ts";

describe("an address in the page", () => {
  it("is read back from its own hash, every station and every layer", () => {
    for (const station of STATIONS) {
      expect(addressOf(hashOf({ station, layer: null }))).toEqual({ station, layer: null });
    }
    for (const layer of LAYERS) {
      expect(addressOf(hashOf({ station: "show", layer }))).toEqual({ station: "show", layer });
    }
  });

  it.each([
    ["", "clear", null],
    ["#nowhere", "clear", null],
    // As older bookmarks have it.
    ["#counter", "show", "counter"],
    ["#sheet", "show", "sheet"],
    // Layers lie over what is shown to a customer, and over nothing else.
    ["#measure/counter", "measure", null],
    ["#show/measure", "show", null],
    ["#setup=1.abc", "clear", null],
  ] as const)("of %s is %s, %s", (hash, station, layer) => {
    expect(addressOf(hash)).toEqual({ station, layer });
  });
});
