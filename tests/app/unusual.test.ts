import { describe, expect, it } from "vitest";
import { lengthFormat } from "../../src/app/state/selectors.ts";
import { doubtsOf, unusualAt } from "../../src/app/state/useDoubts.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";
import { valueAt } from "../../src/setup/types/keyPath.ts";
import { exampleDocument } from "./exampleText.ts";

const HUB_FACE = ["knuckle", "hubFace"];
const SO = { check: "hubFace", at: "knuckle.hubFace", length: 60 };

function opened() {
  const variants = [
    { name: "wide rim", patch: { wheel: { rimWidth: 10 } } },
    { name: "own list", patch: { confirmed: [{ check: "span", at: "knuckle.span", length: 3 }] } },
  ];
  const document = { ...exampleDocument, truck: { ...exampleDocument.truck, body: [] }, variants };
  const store = createWorkbenchStore(JSON.stringify(document), "test.json");
  const state = () => store.getState();
  const doubts = () => doubtsOf(state().truck!, lengthFormat(state())).map(({ path }) => path.join("."));
  const confirm = () => {
    const [first] = unusualAt(state(), HUB_FACE);
    state().insertItem(["confirmed"], Number.POSITIVE_INFINITY, first!.confirm);
  };
  return { state, doubts, confirm };
}

describe("an unusual value at the page", () => {
  it("is in doubt as soon as it is typed, at its field, until somebody says it is so; undo goes back", () => {
    const { state, doubts, confirm } = opened();
    expect(doubts()).toEqual([]);
    state().editField(HUB_FACE, "60");
    expect(doubts()).toEqual(["knuckle.hubFace"]);
    expect(unusualAt(state(), ["knuckle", "span"])).toEqual([]);
    confirm();
    expect(doubts()).toEqual([]);
    expect(valueAt(state().document, ["confirmed"])).toEqual([SO]);
    state().undo();
    expect(doubts()).toEqual(["knuckle.hubFace"]);
    expect(valueAt(state().document, ["confirmed"])).toBeUndefined();
    state().redo();
    expect(doubts()).toEqual([]);
  });

  it("is in doubt again when it changes, and at peace when it comes back", () => {
    const { state, doubts, confirm } = opened();
    state().editField(HUB_FACE, "60");
    confirm();
    state().editField(HUB_FACE, "61");
    expect(doubts()).toEqual(["knuckle.hubFace"]);
    state().editField(HUB_FACE, "60");
    expect(doubts()).toEqual([]);
    state().removeItem(["confirmed"], 0);
    expect(doubts()).toEqual(["knuckle.hubFace"]);
  });

  it("is confirmed for the setup and all its variants; only a variant with a list of its own keeps its own", () => {
    const { state, doubts, confirm } = opened();
    state().editField(HUB_FACE, "60");
    state().chooseVariant("wide rim");
    expect(doubts()).toEqual(["knuckle.hubFace"]);
    confirm();
    expect(valueAt(state().document, ["confirmed"])).toEqual([SO]);
    expect(valueAt(state().document, ["variants", 0, "patch"])).toEqual({ wheel: { rimWidth: 10 } });
    state().chooseVariant("own list");
    expect(doubts()).toEqual(["knuckle.hubFace"]);
    confirm();
    expect(doubts()).toEqual([]);
    expect(valueAt(state().document, ["variants", 1, "patch", "confirmed"])).toHaveLength(2);
    expect(valueAt(state().document, ["confirmed"])).toEqual([SO]);
  });
});
