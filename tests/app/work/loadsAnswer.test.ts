import { expect, it } from "vitest";
import { SHIPPED } from "../../../src/app/parts/catalogs/shippedCatalogs.ts";
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

it("a catalog of materials given goes in place of the program's own: twice the yield, half the share", () => {
  const pose = { travel: 10, steer: 0 };
  const own = SHIPPED.materials.map((one) => ({ ...one, yield: 2 * one.yield, ultimate: 2 * one.ultimate }));
  const [plain, doubled] = [undefined, own].map((materials) => {
    const answer = loadsAnswerOf(model, { pose, materials }, Budget.endless());
    if (!answer.ok) throw new Error(answer.issue.mend);
    return answer.report.governs!;
  });
  expect(doubled!.shareOfYield).toBeCloseTo(0.5 * plain!.shareOfYield, 12);
  expect(loadsAnswerOf(model, { pose, materials: [] }, Budget.endless())).toMatchObject({
    ok: false,
    issue: { key: "build.material" },
  });
});
