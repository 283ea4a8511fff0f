import { describe, expect, it } from "vitest";
import { truckOf } from "../../../src/app/state/truck.ts";
import { answererOf, type WorkReply } from "../../../src/app/work/answerer.ts";
import type { JobName } from "../../../src/app/work/jobs.ts";
import { limitsOf } from "../../../src/studies/limits/limitsOf.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { exampleText } from "../exampleText.ts";

const IN = 25.4;
const made = truckOf(exampleText, "test.json", null);
if (!made.ok) throw new Error("the test's truck goes together");
const { model, ask } = made.value;

const QUESTIONS: Readonly<Partial<Record<JobName, unknown>>> = {
  check: null,
  map: null,
  limits: null,
  poseLimits: { travel: 0, steer: 0.2 },
  heights: { travels: [0, 3.25 * IN] },
  envelope: { choice: "straight", travel: 0, edges: [6.35] },
  section: { plane: { axis: "x", at: 0 }, travel: 0, steer: 0 },
};

/** What a worker replies last to a question. */
function replied(job: JobName, seconds: number | null, question = QUESTIONS[job], truck = ask): WorkReply {
  const replies: WorkReply[] = [];
  const answer = answererOf((reply) => replies.push(structuredClone(reply)));
  answer({ id: 7, job, seconds, truck, question: question as never });
  expect(replies.every(({ id }) => id === 7)).toBe(true);
  return replies.at(-1)!;
}

describe("a worker", () => {
  it.each(Object.keys(QUESTIONS) as JobName[])("finishes %s when it may take as long as it takes", (job) => {
    expect(replied(job, null)).toMatchObject({ kind: "done", isCut: false });
  });

  it.each(["check", "map", "poseLimits", "heights", "envelope"] as const)(
    "answers %s with what it reached when the time is up, and says that it was cut short",
    (job) => {
      expect(replied(job, 1e-9)).toMatchObject({ kind: "done", isCut: true });
    },
  );

  it("answers as the study does", () => {
    expect(replied("check", null)).toMatchObject({ answer: checkClearance(model) });
    expect(replied("limits", null)).toMatchObject({ answer: structuredClone(limitsOf(model)) });
  });

  it("says what is wrong instead of nothing", () => {
    const impossible = { ...ask, setup: { ...ask.setup, knuckle: { ...ask.setup.knuckle, span: 5000 } } };
    expect(replied("heights", 2, { travels: [] }, impossible)).toMatchObject({
      kind: "failed",
      message: expect.stringContaining("span"),
    });
    expect(replied("poseLimits", 2, null)).toMatchObject({ kind: "failed" });
  });

  it("keeps the truck it was handed until it gets another", () => {
    const replies: WorkReply[] = [];
    const answer = answererOf((reply) => replies.push(reply));
    answer({ id: 1, job: "limits", question: null, seconds: null });
    answer({ id: 2, job: "limits", question: null, seconds: null, truck: ask });
    answer({ id: 3, job: "limits", question: null, seconds: null });
    expect(replies.map(({ kind }) => kind)).toEqual(["failed", "done", "done"]);
  });
});
