import { describe, expect, it } from "vitest";
import { chosenPair } from "../../src/app/show/counter/counterStore.ts";
import { hubFaceRange, withHubFace } from "../../src/app/show/counter/whatIf.ts";
import { type Truck, truckOf } from "../../src/app/state/truck.ts";
import { answerCounter } from "../../src/app/work/answerCounter.ts";
import { type Answerer, answerStoreOf } from "../../src/app/work/answerStore.ts";
import type { CounterAnswer, CounterRequest } from "../../src/app/work/counterMessages.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { exampleText } from "./exampleText.ts";

const IN = 25.4;

function truck(variant: string | null): Truck {
  const made = truckOf(exampleText, "test.json", variant);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

describe("the two that are compared", () => {
  it("are the setup as it stands and the variant shown, or the first one, until others are chosen", () => {
    const none = { first: undefined, second: undefined };
    expect(chosenPair(none, ["a", "b"], "b")).toEqual([null, "b"]);
    expect(chosenPair(none, ["a", "b"], null)).toEqual([null, "a"]);
    expect(chosenPair(none, [], null)).toEqual([null, null]);
    expect(chosenPair({ first: "b", second: "a" }, ["a", "b"], null)).toEqual(["b", "a"]);
    expect(chosenPair({ first: "b", second: null }, ["a", "b"], "a")).toEqual(["b", null]);
  });

  it("are others when one chosen has been removed", () => {
    expect(chosenPair({ first: "gone", second: "gone" }, ["a"], "a")).toEqual([null, "a"]);
    expect(chosenPair({ first: "a", second: "gone" }, ["a"], "a")).toEqual(["a", null]);
  });
});

describe("another hub face", () => {
  it("gives the very truck that a variant with that hub face gives", () => {
    const changed = withHubFace(truck(null), 5.625 * IN);
    if (!changed.ok) throw new Error("a hub face half an inch narrower must go together");
    const asked = solvePose(changed.value.model.frontEnd, 30, 0.3);
    const typed = solvePose(truck("narrow").model.frontEnd, 30, 0.3);
    if (!asked.ok || !typed.ok) throw new Error("the test's own trucks must reach their poses");
    expect([...asked.left.row]).toEqual([...typed.left.row]);
  });

  it("runs half an inch past both, in whole sixteenths", () => {
    const range = hubFaceRange((6 + 5 / 16) * IN, (5 + 5 / 16) * IN, IN / 16);
    expect([range.least / 16, range.most / 16]).toEqual([4 + 13 / 16, 6 + 13 / 16]);
    const odd = hubFaceRange(6.01 * IN, 6.01 * IN, IN / 16);
    expect([odd.least / 16, odd.most / 16]).toEqual([5 + 9 / 16, 6.5]);
    expect(hubFaceRange(0.2 * IN, IN, IN / 16).least).toBe(1);
  });
});

/** Answers when the test says so. */
function slowAnswerer() {
  const requests: CounterRequest[] = [];
  let listener: (answer: CounterAnswer) => void = () => {};
  const answerer: Answerer = {
    ask: (request) => void requests.push(request),
    onAnswer: (given) => {
      listener = given;
    },
  };
  return { requests, answerer, answer: (answer: CounterAnswer) => listener(answer) };
}

describe("answers", () => {
  it("come bit by bit: first how far it steers, then the whole range", () => {
    const { setup, file } = truck(null);
    const answers: CounterAnswer[] = [];
    answerCounter({ id: 7, setup, file, isAligned: false, travels: [0, 3.25 * IN] }, (answer) =>
      answers.push(answer),
    );
    expect(answers.map(({ id, kind }) => [id, kind])).toEqual([
      [7, "steering"],
      [7, "check"],
    ]);
    expect(answers[0]).toMatchObject({
      steering: [
        { ok: true, travel: 0 },
        { ok: true, travel: 3.25 * IN },
      ],
    });
  });

  it("say what is wrong instead of nothing", () => {
    const { setup, file } = truck(null);
    const impossible = { ...setup, knuckle: { ...setup.knuckle, span: 5000 } };
    const answers: CounterAnswer[] = [];
    answerCounter({ id: 1, setup: impossible, file, isAligned: false, travels: [] }, (answer) =>
      answers.push(answer),
    );
    expect(answers).toMatchObject([{ id: 1, kind: "failed" }]);
    expect(answers[0]).toHaveProperty("message", expect.stringContaining("span"));
  });

  it("are asked for one truck at a time, and only for those wanted last", () => {
    const { requests, answerer, answer } = slowAnswerer();
    const { want, answerOf } = answerStoreOf(answerer);
    const travels = [0];
    const [a, b, c, d] = [truck(null), truck("narrow"), truck(null), truck(null)];
    want([a, b], travels);
    want([a, c], travels);
    want([a, d], travels);
    expect(requests.map(({ setup }) => setup)).toEqual([a.setup]);
    answer({ id: requests[0]!.id, kind: "steering", steering: [], heights: [] });
    expect(requests).toHaveLength(1);
    answer({ id: requests[0]!.id, kind: "failed", message: "gave up" });
    expect(requests[1]!.setup).toBe(d.setup);
    expect(answerOf(a, travels)).toEqual({ steering: [], heights: [], report: null, failure: "gave up" });
    expect(answerOf(d, travels).steering).toBeNull();
    // Wanted again later: what failed is not asked for without end.
    answer({ id: requests[1]!.id, kind: "failed", message: "gave up" });
    want([a], travels);
    expect(requests).toHaveLength(2);
  });

  it("of another question, or for other heights, do not count", () => {
    const { requests, answerer, answer } = slowAnswerer();
    const { want, answerOf, store } = answerStoreOf(answerer);
    const a = truck(null);
    want([a], [0]);
    answer({ id: requests[0]!.id + 5, kind: "steering", steering: [], heights: [] });
    expect(answerOf(a, [0]).steering).toBeNull();
    expect(store.getState().version).toBe(0);
    answer({ id: requests[0]!.id, kind: "steering", steering: [], heights: [] });
    expect(answerOf(a, [0]).steering).toEqual([]);
    expect(answerOf(a, [0, 50]).steering).toBeNull();
  });
});
