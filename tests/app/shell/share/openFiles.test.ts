import { describe, expect, it } from "vitest";
import { openFiles } from "../../../../src/app/shell/share/openFiles.ts";
import { notice } from "../../../../src/app/state/notice.ts";
import { createWorkbenchStore, type WorkbenchStore } from "../../../../src/app/state/workbenchStore.ts";
import { type KeyPath, valueAt } from "../../../../src/setup/types/keyPath.ts";
import { exampleDocument, exampleText } from "../../exampleText.ts";

const PANEL = "v -9 20 36.5\nv 9 20 36.5\nv 9 36 36.5\nv -9 36 36.5\nf 1 2 3 4\n";

const panel = (name = "panel.obj", text = PANEL) => new File([text], name);

/** A setup with one mesh file for each name. */
function setup(...files: string[]): File {
  const body = files.map((file, i) => ({ name: `panel ${i}`, kind: "mesh", file }));
  const document = { ...exampleDocument, name: "With panels", truck: { ...exampleDocument.truck, body } };
  return new File([JSON.stringify(document)], "panels.json");
}

const opened = () => createWorkbenchStore(exampleText, "test.json");

function shown(store: WorkbenchStore) {
  const { truck, refusal, issues } = store.getState();
  const told = [...(refusal?.issues ?? []), ...issues];
  return { name: truck?.setup.name, issues: told.map(({ file, key, mend }) => `${file} ${key}: ${mend}`) };
}

const TOGETHER = { name: "With panels", issues: [] };

describe("files picked or dropped together", () => {
  it("are a setup with its mesh files, in any order", async () => {
    for (const files of [
      [setup("panel.obj"), panel()],
      [panel(), setup("panel.obj")],
    ]) {
      const store = opened();
      await openFiles(store, files);
      expect(shown(store)).toEqual(TOGETHER);
      const part = store.getState().truck!.setup.truck.body[0]!;
      expect(part.kind === "mesh" && part.triangles.length).toBe(6);
    }
  });

  it("may hold mesh files of several parts, and the page is told no folders", async () => {
    const store = opened();
    await openFiles(store, [setup("left/panel.obj", "other.obj"), panel(), panel("other.obj")]);
    expect(shown(store)).toEqual(TOGETHER);
  });

  it("tell each mesh file that is missing; the truck shown stays", async () => {
    const store = opened();
    const before = store.getState().truck;
    await openFiles(store, [setup("panel.obj", "other.obj")]);
    expect(shown(store).issues).toEqual([
      "panels.json truck.body[0].file: add this mesh file: pick or drop it, with the setup or after it",
      "panels.json truck.body[1].file: add this mesh file: pick or drop it, with the setup or after it",
    ]);
    expect(store.getState().refusal!.issues[0]!.value).toBe('"panel.obj"');
    expect(store.getState().truck).toBe(before);
  });

  it("complete a setup one after the other", async () => {
    const store = opened();
    await openFiles(store, [setup("panel.obj", "other.obj")]);
    await openFiles(store, [panel("other.obj")]);
    expect(shown(store).issues).toHaveLength(1);
    await openFiles(store, [panel()]);
    expect(shown(store)).toEqual(TOGETHER);
  });

  it("replace a mesh file of the same name, and variants keep to it", async () => {
    const store = opened();
    await openFiles(store, [setup("panel.obj"), panel()]);
    await openFiles(store, [panel("panel.obj", PANEL.replaceAll("36.5", "40"))]);
    store.getState().chooseVariant("narrow");
    const part = store.getState().truck!.setup.truck.body[0]!;
    expect(store.getState().truck!.setup.variant).toBe("narrow");
    expect(part.kind === "mesh" && part.positions[2]).toBeCloseTo(40 * 25.4, 9);
  });

  it("with a broken mesh say what is wrong in it, and a mended one completes the setup", async () => {
    const store = opened();
    await openFiles(store, [setup("panel.obj"), panel("panel.obj", PANEL.replace("v 9 20", "v 9 twenty"))]);
    expect(shown(store).issues).toEqual([
      'panels.json truck.body[0].file: line 2: "twenty" where a number should be; export it again',
    ]);
    await openFiles(store, [panel()]);
    expect(shown(store)).toEqual(TOGETHER);
  });

  it("of one name for two paths of a setup are not mistaken for each other", async () => {
    const store = opened();
    await openFiles(store, [setup("left/panel.obj", "right/panel.obj"), panel()]);
    expect(shown(store).issues).toEqual([
      'panels.json truck.body[1].file: has the same name as "left/panel.obj"; rename one of the two files',
    ]);
  });

  it("that no setup names become body parts, in one step, and it is told", async () => {
    const store = opened();
    const asked: KeyPath[] = [];
    await openFiles(store, [panel()], (path) => asked.push(path));
    expect(shown(store).name).toBe(exampleDocument.name);
    expect(asked).toEqual([["truck", "body", exampleDocument.truck.body.length]]);
    const body = valueAt(store.getState().document, ["truck", "body"]) as readonly object[];
    expect(body.at(-1)).toMatchObject({ name: "panel", kind: "mesh", file: "panel.obj" });
    expect(notice.getState().shown?.text).toMatch(/is a body part of this truck now/);
    store.getState().undo();
    expect(store.getState().document).toEqual(exampleDocument);
    await openFiles(store, [panel(), panel("other.obj")]);
    expect(notice.getState().shown?.text).toMatch(/^The 2 scans are body parts of this truck now/);
  });

  it("may hold one setup only", async () => {
    const store = opened();
    await openFiles(store, [setup("panel.obj"), new File(["{}"], "other.json")]);
    expect(shown(store).issues).toEqual([
      "other.json : only one setup can be opened, and panels.json is another; pick one, with its mesh files",
    ]);
  });

  it("may be none", async () => {
    const store = opened();
    const before = store.getState();
    await openFiles(store, []);
    expect(store.getState()).toBe(before);
  });
});
