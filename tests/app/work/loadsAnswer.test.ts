import { expect, it } from "vitest";
import { loadsAnswerOf } from "../../../src/app/work/loadsAnswer.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { example, truckOf } from "../../studies/loads/loadTruck.ts";

const document = example("ordered-knuckle.json");
const { model } = truckOf(document);
const answerOf = (changed: object) =>
  loadsAnswerOf(
    { ...model, setup: { ...model.setup, ...changed } },
    { pose: { travel: 10, steer: 0 } },
    Budget.endless(),
  );

it("the page's loads know the catalog of materials, and name the key that is missing", () => {
  const answer = answerOf({});
  expect(answer.ok && answer.report.governs?.material).toMatch(/^4[13][34]0/);
  expect(answerOf({ masses: null })).toMatchObject({ ok: false, issue: { key: "masses" } });
  expect(answerOf({ loads: null })).toMatchObject({ ok: false, issue: { key: "loads.spring" } });
  expect(answerOf({ build: { ...model.setup.build!, material: "mud" } })).toMatchObject({
    ok: false,
    issue: { key: "build.material" },
  });
});
