import { afterEach, describe, expect, it } from "vitest";
import { openFiles } from "../../src/app/shell/share/openFiles.ts";
import {
  CATALOG_NAMES,
  dropCatalog,
  givenCatalogs,
  isCatalogText,
} from "../../src/app/state/givenCatalogs.ts";
import { notice } from "../../src/app/state/notice.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";
import type { CatalogKind } from "../../src/setup/catalogs/catalogDocument.ts";
import { exampleText } from "./exampleText.ts";

const catalog = {
  format: "wellsweep-catalog",
  version: 1,
  kind: "brakes",
  units: "in",
  items: [{ name: "Ours", rotorDiameter: 12 }],
};

afterEach(() => {
  for (const kind of Object.keys(CATALOG_NAMES) as CatalogKind[]) dropCatalog(kind);
  notice.setState({ shown: null });
});

describe("a catalog picked or dropped", () => {
  it("goes in place of the program's own of its kind, and the truck stays", async () => {
    const store = createWorkbenchStore(exampleText, "test.json");
    const { truck } = store.getState();
    await openFiles(store, [new File([JSON.stringify(catalog, null, 2)], "our brakes.json")]);
    expect(givenCatalogs.getState().given.brakes).toMatchObject({
      file: "our brakes.json",
      catalogs: { brakes: [{ name: "Ours", part: { rotorDiameter: expect.closeTo(304.8, 9) } }] },
    });
    expect(store.getState().truck).toBe(truck);
    expect(store.getState().refusal).toBeNull();
    expect(notice.getState().shown?.text).toContain("our brakes.json");
    dropCatalog("brakes");
    expect(givenCatalogs.getState().given).toEqual({});
  });

  it("may be of materials or of tubes", async () => {
    const store = createWorkbenchStore(exampleText, "test.json");
    const { units: _, ...head } = catalog;
    const steel = { name: "ours", yield: "60 ksi", ultimate: "80 ksi", source: "its certificate" };
    const materials = { ...head, kind: "materials", items: [steel] };
    const tubes = { ...catalog, kind: "tubes", items: [{ name: "ours", diameter: 2, wall: "1/4" }] };
    for (const [file, of] of Object.entries({ "steels.json": materials, "tubes.json": tubes }))
      await openFiles(store, [new File([JSON.stringify(of)], file)]);
    expect(givenCatalogs.getState().given).toMatchObject({
      materials: { file: "steels.json", catalogs: { materials: [{ name: "ours" }] } },
      tubes: { file: "tubes.json", catalogs: { tubes: [{ part: { diameter: expect.closeTo(50.8, 9) } }] } },
    });
    expect(notice.getState().shown?.text).toContain("the program’s own tubes");
  });

  it("that is broken is refused with file, key and mend, and nothing is replaced", async () => {
    const store = createWorkbenchStore(exampleText, "test.json");
    const broken = { ...catalog, items: [{ name: "Ours", rotorDiameter: -12 }] };
    await openFiles(store, [new File([JSON.stringify(broken)], "broken.json")]);
    expect(store.getState().refusal!.issues).toEqual([
      { file: "broken.json", key: "items[0].rotorDiameter", value: "-12", mend: "must be more than 0" },
    ]);
    expect(givenCatalogs.getState().given).toEqual({});
  });

  it("is told from a setup by what it says it is, not by a name inside", () => {
    expect(isCatalogText(JSON.stringify(catalog))).toBe(true);
    expect(isCatalogText(exampleText)).toBe(false);
    expect(isCatalogText('{"name": "x", "order": {"format": "wellsweep-catalog"}}')).toBe(false);
  });
});
