import { describe, expect, it } from "vitest";
import { createWorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import { answerCheck } from "../../../src/app/work/answerCheck.ts";
import type { CheckAnswer, CheckRequest } from "../../../src/app/work/checkMessages.ts";
import { runChecks } from "../../../src/app/work/runChecks.ts";
import { exampleText } from "../exampleText.ts";

/** Real reports, each worked out once: what is tested is when an answer counts, not the check. */
const reports = new Map<string | null, CheckAnswer>();
function realAnswer(request: CheckRequest): CheckAnswer {
  const { variant } = request.setup;
  const known = reports.get(variant) ?? answerCheck(request);
  reports.set(variant, known);
  return { ...known, id: request.id };
}

/** A checker that answers when the test says so. */
function slowChecker() {
  const requests: CheckRequest[] = [];
  let listener: (answer: CheckAnswer) => void = () => {};
  return {
    requests,
    ask: (request: CheckRequest) => void requests.push(structuredClone(request)),
    onAnswer: (given: (answer: CheckAnswer) => void) => {
      listener = given;
    },
    answer: (request: CheckRequest) => listener(realAnswer(request)),
    fail: (id: number) => listener({ id, ok: false, code: "fault", message: "the worker gave up" }),
  };
}

function checking() {
  const store = createWorkbenchStore(exampleText, "test.json");
  const checker = slowChecker();
  runChecks(store, checker);
  const status = () => store.getState().check.status;
  return { store, checker, status };
}

describe("checking in the background", () => {
  it("asks at once, with a setup that survives the way to a worker, and hands over the answer", () => {
    const { store, checker, status } = checking();
    expect(checker.requests).toHaveLength(1);
    expect(status()).toBe("checking");
    checker.answer(checker.requests[0]!);
    const { check } = store.getState();
    expect(check.status).toBe("done");
    if (check.status === "done") expect(check.report.parts).toHaveLength(4);
  });

  it("does not ask again for a change of pose, view or selection", () => {
    const { store, checker } = checking();
    store.getState().setPose(20, 0.5);
    store.getState().setView("top");
    store.getState().select({ part: "lip", side: "left" });
    expect(checker.requests).toHaveLength(1);
  });

  it("never shows the answer for a truck that is no longer there, and then asks for the one that is", () => {
    const { store, checker, status } = checking();
    store.getState().chooseVariant("narrow");
    expect(checker.requests).toHaveLength(1);
    checker.answer(checker.requests[0]!);
    expect(status()).toBe("checking");
    expect(checker.requests.map(({ setup }) => setup.variant)).toEqual([null, "narrow"]);
    checker.answer(checker.requests[1]!);
    expect(status()).toBe("done");
  });

  it("takes no answer twice, and none that was not asked for", () => {
    const { store, checker } = checking();
    store.getState().chooseVariant("narrow");
    checker.answer(checker.requests[0]!);
    checker.answer(checker.requests[0]!);
    expect(store.getState().check.status).toBe("checking");
    expect(checker.requests).toHaveLength(2);
  });

  it("remembers an answer for when its truck is shown again, also one that came while another was shown", () => {
    const { store, checker, status } = checking();
    store.getState().chooseVariant("narrow");
    checker.answer(checker.requests[0]!);
    store.getState().chooseVariant(null);
    expect(status()).toBe("done");
    checker.answer(checker.requests[1]!);
    expect(checker.requests).toHaveLength(2);
  });

  it("does not ask twice for a truck that is shown again before its answer came", () => {
    const { store, checker, status } = checking();
    store.getState().chooseVariant("narrow");
    store.getState().chooseVariant(null);
    expect(status()).toBe("checking");
    checker.answer(checker.requests[0]!);
    expect(status()).toBe("done");
    expect(checker.requests).toHaveLength(1);
  });

  it("passes over the trucks of a drag that are gone when the checker is free", () => {
    const { store, checker } = checking();
    for (const hubFace of [6, 6.1, 6.2, 6.3]) store.getState().editField(["knuckle", "hubFace"], hubFace);
    checker.answer(checker.requests[0]!);
    expect(checker.requests.map(({ setup }) => setup.knuckle.hubFace / 25.4)).toEqual([
      expect.closeTo(6.125, 9),
      expect.closeTo(6.3, 9),
    ]);
  });

  it("says so when the check fails", () => {
    const { store, checker } = checking();
    checker.fail(1);
    expect(store.getState().check).toEqual({ status: "failed", message: "the worker gave up" });
  });
});
