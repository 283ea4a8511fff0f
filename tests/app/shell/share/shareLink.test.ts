import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openSharedLink } from "../../../../src/app/shell/share/openSharedLink.ts";
import { shareBoard } from "../../../../src/app/shell/share/shareComparison.ts";
import { MAX_LINK_CHARACTERS, readShareLink, shareLink } from "../../../../src/app/shell/share/shareLink.ts";
import { createWorkbenchStore } from "../../../../src/app/state/workbenchStore.ts";
import { exampleText } from "../../exampleText.ts";

const PAGE = "https://example.org/wellsweep/?x=1#choose";
const sharedSetup = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../../../shared/${name}.json`, import.meta.url), "utf8"));
const demo = sharedSetup("half-ton-on-air");
const none = new Set<string>();

async function linkOf(document: Record<string, unknown>): Promise<string> {
  const link = await shareLink({ document, file: "f.json" }, PAGE, none);
  if (!link.ok) throw new Error(link.mend);
  return link.url;
}
const hashOf = (url: string) => url.slice(url.indexOf("#"));

describe("a share link", () => {
  it("holds the whole example, after the page's own address, in letters that any program leaves alone", async () => {
    const url = await linkOf(demo);
    expect(url).toMatch(/^https:\/\/example\.org\/wellsweep\/\?x=1#setup=2\.[0-9A-Z]+&at=choose$/);
    expect(url.length).toBeLessThan(300);
    expect(await readShareLink(hashOf(url))).toEqual({
      ok: true,
      address: { station: "choose", layer: null },
      shared: { document: demo, file: "f.json" },
    });
  });

  it("holds the pose it was shared at, and opens there; without one at the pose a truck opens at", async () => {
    const link = await shareLink({ document: demo, file: "f.json", travel: 63.5, steer: -0.25 }, PAGE, none);
    if (!link.ok) throw new Error(link.mend);
    expect(link.url).toMatch(/&at=choose&pose=63\.5,-0\.25$/);
    const read = await readShareLink(hashOf(link.url));
    expect(read).toMatchObject({
      ok: true,
      address: { station: "choose", layer: null },
      shared: { travel: 63.5, steer: -0.25 },
    });
    const store = createWorkbenchStore(exampleText, "test.json");
    await openSharedLink(store, hashOf(link.url));
    expect([store.getState().travel, store.getState().steer]).toEqual([63.5, -0.25]);
    for (const pose of ["", "&pose=", "&pose=12", "&pose=a,b"]) {
      await openSharedLink(store, hashOf(link.url).replace(/&pose=.*/, pose));
      expect([store.getState().travel, store.getState().steer], pose).toEqual([0, 0]);
    }
    await openSharedLink(store, hashOf(link.url).replace(/&pose=.*/, "&pose=1e9,7"));
    expect(store.getState().travel).toBe(store.getState().truck!.setup.travel.bump);
    expect(store.getState().steer).toBe(1);
  });

  it("gives back any document", async () => {
    await fc.assert(
      fc.asyncProperty(fc.dictionary(fc.string(), fc.jsonValue()), async (typed) => {
        const document = JSON.parse(JSON.stringify(typed));
        const read = await readShareLink(hashOf(await linkOf(document)));
        expect(read?.ok && read.shared.document).toEqual(document);
      }),
      { seed: 1955, numRuns: 200 },
    );
  });

  it("that would be too long says so", async () => {
    // Digits of an irrational number: nothing packs them.
    const vertices = Array.from({ length: 9000 }, (_, i) =>
      [0, 1, 2].map((k) => (Math.sqrt(i + 2) * 10 ** k) % 1),
    );
    const link = await shareLink({ document: { vertices }, file: "f.json" }, PAGE, none);
    expect(link).toMatchObject({ ok: false, mend: expect.stringContaining(String(MAX_LINK_CHARACTERS)) });
  });

  it("cannot hold mesh files, and names them", async () => {
    const link = await shareLink({ document: demo, file: "f.json" }, PAGE, new Set(["fender.stl"]));
    expect(link).toMatchObject({ ok: false, mend: expect.stringContaining('"fender.stl"') });
  });

  it("that was cut off, mistyped or made by a newer version is refused with its reason", async () => {
    const hash = hashOf(await linkOf(demo));
    for (const cut of [9, 12, 60, hash.indexOf("&") - 1]) {
      expect(await readShareLink(hash.slice(0, cut))).toMatchObject({
        ok: false,
        mend: expect.stringContaining("cut off"),
      });
    }
    expect(await readShareLink("#setup=1.!!!")).toMatchObject({ ok: false });
    expect(await readShareLink("#setup=3.abc")).toMatchObject({
      ok: false,
      mend: expect.stringContaining("newer"),
    });
    expect(await readShareLink("#definitions")).toBeNull();
    expect(await readShareLink("")).toBeNull();
  });

  it("with one letter changed is never another truck", async () => {
    const hash = hashOf(await linkOf(demo));
    const [from, to] = ["#setup=2.".length, hash.indexOf("&")];
    for (let at = from; at < to; at++) {
      const letter = hash[at] === "7" ? "8" : "7";
      const read = await readShareLink(hash.slice(0, at) + letter + hash.slice(at + 1));
      expect(read?.ok, `letter ${at}`).toBe(false);
    }
  });

  it("made when links were longer still opens", async () => {
    const first = readFileSync(new URL("firstLink.txt", import.meta.url), "utf8").trim();
    expect(first.length).toBe(1342);
    const read = await readShareLink(hashOf(first));
    if (!read?.ok) throw new Error("the link must read");
    expect(read.address).toEqual({ station: "show", layer: "counter" });
    expect(read.shared.file).toBe("compact-front-steer.json");
    // What the example had then.
    const { floor: _, roll: __, ...example } = sharedSetup("compact-front-steer");
    expect(read.shared.document).toEqual({ ...example, variants: example.variants.slice(0, 1) });
    expect(read.shared.counter).toMatchObject({ first: null });
  });

  it("is packed with texts that never change: every link made so far needs them", async () => {
    const { default: texts } = await import("../../../../src/app/shell/share/knownTexts.txt?raw");
    expect(createHash("sha256").update(texts).digest("hex")).toBe(
      "b9e4bbbcb2920202d36845f3d5c167fd9df9f6de59dc4269ca13d385ba94896a",
    );
    // A link as it was made when they were first packed so.
    const read = await readShareLink("#setup=2.MMMVRXRN3IXJE4EV7HQOXKPF3HB6KRHW26SADDVAK600");
    expect(read?.ok && read.shared).toEqual({ file: "a.json", document: { name: "A" } });
  });

  it("that unpacks to far more than any setup is refused, not unpacked", async () => {
    const link = await shareLink(
      { document: { a: "x".repeat(9 * 1024 * 1024) }, file: "f.json" },
      PAGE,
      none,
    );
    if (!link.ok) throw new Error(link.mend);
    expect(await readShareLink(hashOf(link.url))).toMatchObject({ ok: false });
    // Links of the first version were deflated alone, and anybody may still make one.
    const first = (a: string) => {
      const packed = deflateRawSync(JSON.stringify({ file: "f.json", setup: { a } }));
      return readShareLink(`#setup=1.${packed.toString("base64url")}`);
    };
    expect(await first("x")).toMatchObject({ ok: true, shared: { document: { a: "x" } } });
    expect(await first("x".repeat(9 * 1024 * 1024))).toMatchObject({ ok: false });
  });

  it("opens as another setup, and undo brings back the one before", async () => {
    const store = createWorkbenchStore(exampleText, "test.json");
    const before = store.getState();
    expect(await openSharedLink(store, hashOf(await linkOf(demo)))).toEqual({
      station: "choose",
      layer: null,
    });
    expect(store.getState().truck?.setup.name).toBe(demo.name);
    expect(store.getState().documentId).not.toBe(before.documentId);
    store.getState().undo();
    expect(store.getState().document).toBe(before.document);
  });

  it("that cannot be read leaves the board as it is and says why", async () => {
    const store = createWorkbenchStore(exampleText, "test.json");
    const { document } = store.getState();
    expect(await openSharedLink(store, "#setup=1.zzz")).toEqual({ station: "clear", layer: null });
    expect(store.getState().document).toBe(document);
    expect(store.getState().refusal?.issues[0]).toMatchObject({ file: "shared link" });
    expect(await openSharedLink(store, "#top")).toBeNull();
  });
});

describe("sharing the board", () => {
  it("gives a link to the document as it is, edits and all", async () => {
    const store = createWorkbenchStore(exampleText, "test.json");
    store.getState().editField(["knuckle", "hubFace"], "6 1/2");
    const link = await shareBoard(store, PAGE);
    if (!link.ok) throw new Error(link.mend);
    const read = await readShareLink(hashOf(link.url));
    expect(read?.ok && read.shared.document).toEqual(store.getState().document);
  });

  it("is refused for a setup with mesh files, and without a setup", async () => {
    const store = createWorkbenchStore(exampleText, "test.json");
    store
      .getState()
      .insertItem(["truck", "body"], 0, { name: "scan", kind: "mesh", file: "scans/fender.stl" });
    expect(await shareBoard(store, PAGE)).toMatchObject({
      ok: false,
      mend: expect.stringContaining("fender.stl"),
    });
    expect(await shareBoard(createWorkbenchStore("{", "none.json"), PAGE)).toMatchObject({ ok: false });
  });
});
