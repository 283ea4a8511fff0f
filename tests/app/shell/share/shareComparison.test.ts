import { readFileSync } from "node:fs";
import { beforeEach, describe, expect, it } from "vitest";
import { openSharedLink } from "../../../../src/app/shell/share/openSharedLink.ts";
import { shareComparison } from "../../../../src/app/shell/share/shareComparison.ts";
import { readShareLink } from "../../../../src/app/shell/share/shareLink.ts";
import { modulesOf } from "../../../../src/app/show/counter/QrCode.tsx";
import { counter } from "../../../../src/app/state/counterStore.ts";
import { createWorkbenchStore } from "../../../../src/app/state/workbenchStore.ts";
import { scanned } from "../../scanned.ts";
import { otherNumbers } from "./otherNumbers.ts";

const PAGE = "https://example.org/wellsweep/#show/counter";
const shared = (file: string) => readFileSync(new URL(`../../../../shared/${file}`, import.meta.url), "utf8");
const START = { first: undefined, second: undefined, travel: null, hubFace: null };

async function linkOf(file: string): Promise<string> {
  const store = createWorkbenchStore(shared(file), file);
  const link = await shareComparison(store, PAGE);
  if (!link.ok) throw new Error(link.mend);
  return link.url;
}
const hashOf = (url: string) => url.slice(url.indexOf("#"));

beforeEach(() => counter.setState(START));

describe("a shared comparison", () => {
  it("opens the counter with A, B, height, what-if and standing as they were", async () => {
    const store = createWorkbenchStore(shared("half-ton-limits.json"), "half-ton-limits.json");
    store.getState().setAligned(true);
    const chosen = {
      first: "narrow hub face",
      second: "spring bracket an inch lower",
      travel: -95.25,
      hubFace: 155.575,
    };
    counter.setState(chosen);
    const link = await shareComparison(store, PAGE);
    if (!link.ok) throw new Error(link.mend);

    counter.setState(START);
    const other = createWorkbenchStore(shared("compact-front-steer.json"), "b.json");
    expect(await openSharedLink(other, hashOf(link.url))).toEqual({ station: "show", layer: "counter" });
    expect(counter.getState()).toEqual(chosen);
    expect(other.getState().isAligned).toBe(true);
    const names = other.getState().truck?.setup.variantNames;
    expect(names).toEqual(expect.arrayContaining(["narrow hub face", "spring bracket an inch lower"]));
    expect(names).toHaveLength(2);
  });

  it("holds the truck it was of: the same numbers but for what the counter asks nothing of", async () => {
    const read = await readShareLink(hashOf(await linkOf("ordered-knuckle.json")));
    if (!read?.ok) throw new Error("the link must read");
    const whole = JSON.parse(shared("ordered-knuckle.json"));
    for (const key of ["truck", "knuckle", "wheel", "tire", "hardware", "stances"]) {
      expect(read.shared.document[key], key).toEqual(whole[key]);
    }
    expect(read.shared.document.order).toBeUndefined();
  });

  it.each([
    ...["half-ton-on-air", "half-ton-limits", "compact-front-steer", "flatbed-long-arms"],
    ...["long-bed-steering-box", "ordered-knuckle", "tubular-knuckle"],
  ])("of the example %s is short, and its code large", async (name) => {
    const url = await linkOf(`${name}.json`);
    expect(url.length).toBeLessThan(250);
    expect(60 / modulesOf(url)!.size).toBeGreaterThan(1);
    expect(scanned(url)).toBe(url);
  });

  it.each([
    ...["half-ton-on-air", "half-ton-limits", "compact-front-steer"],
    ...["flatbed-long-arms", "long-bed-steering-box"],
  ])("of a truck as %s, every length measured anew, is short enough for paper", async (name) => {
    const store = createWorkbenchStore(otherNumbers(shared(`${name}.json`), 1955), `${name}.json`);
    expect(store.getState().truck).not.toBeNull();
    const link = await shareComparison(store, PAGE);
    if (!link.ok) throw new Error(link.mend);
    expect(link.url.length).toBeLessThan(900);
    expect(60 / modulesOf(link.url)!.size).toBeGreaterThan(0.6);
    expect(scanned(link.url)).toBe(link.url);
  });

  it("with nonsense for a choice begins as the counter does", async () => {
    const store = createWorkbenchStore(shared("half-ton-on-air.json"), "a.json");
    counter.setState({ first: 7, second: {}, travel: "low", hubFace: null } as never);
    const link = await shareComparison(store, PAGE);
    if (!link.ok) throw new Error(link.mend);
    counter.setState(START);
    await openSharedLink(createWorkbenchStore(shared("half-ton-on-air.json"), "b.json"), hashOf(link.url));
    expect(counter.getState().travel).toBeNull();
  });
});
