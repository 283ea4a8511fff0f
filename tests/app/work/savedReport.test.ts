import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { createWorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import type { Wish } from "../../../src/app/work/answerCache.ts";
import { answerOnce } from "../../../src/app/work/savedReport.ts";
import { work } from "../../../src/app/work/work.ts";
import { exampleText } from "../exampleText.ts";
import { type FakeWorker, fakeWorkers } from "./fakeWorkers.ts";

const store = createWorkbenchStore(exampleText, "test.json");
const { startWorker } = fakeWorkers();
/** The one that was asked last. */
let asked: FakeWorker | null = null;
const busy = () => asked!;

beforeAll(() => {
  vi.stubGlobal("Worker", function started() {
    const worker = startWorker();
    const { postMessage } = worker;
    worker.postMessage = (request) => {
      asked = worker;
      postMessage(request);
    };
    return worker;
  });
});
afterAll(() => void vi.unstubAllGlobals());

/** A window of a truck of its own, asked for to be saved; its answers are told in order. */
function saving(hubFace: number) {
  store.getState().editField(["knuckle", "hubFace"], hubFace);
  const question = { document: null, field: "knuckle.hubFace" };
  const wish: Wish<"window"> = { job: "window", truck: store.getState().truck!, question, given: null };
  const giveUp = new AbortController();
  const came: unknown[] = [];
  const ended = answerOnce(wish, giveUp.signal, () => {}).then(
    (answer) => came.push(answer),
    (fault: Error) => came.push(fault.message),
  );
  return { wish, giveUp, came, ended };
}

/** Lets promises settle. */
const settled = () => new Promise((done) => setTimeout(done, 0));

describe("an answer that is saved", () => {
  it("is there at once where it is whole", async () => {
    const { came, ended } = saving(6);
    busy().done({ of: 2 });
    await ended;
    expect(came).toEqual([{ of: 2 }]);
  });

  it("is what the first longer search brings where it was cut short, cut again or not", async () => {
    const { wish, came, ended } = saving(6.1);
    busy().done({ of: 2 }, true);
    await settled();
    expect(came).toEqual([]);
    expect(work.of(wish)).toMatchObject({ answer: { of: 2 }, isCut: true });
    busy().done({ of: 10 }, true);
    await ended;
    expect(came).toEqual([{ of: 10 }]);
  });

  it("is the one there is once the longer search is stopped, or fails", async () => {
    const stopped = saving(6.2);
    busy().done({ of: 2 }, true);
    await settled();
    expect(stopped.came).toEqual([]);
    work.cancel(work.of(stopped.wish));
    await stopped.ended;
    expect(stopped.came).toEqual([{ of: 2 }]);
    const failed = saving(6.3);
    busy().done({ of: 3 }, true);
    busy().crash("out of memory");
    await failed.ended;
    expect(failed.came).toEqual([{ of: 3 }]);
  });

  it("is of the question asked, where another about the pose was answered before", async () => {
    const { truck } = saving(6.6).wish;
    busy().done({});
    const me = {};
    const shown: Wish<"loads"> = {
      job: "loads",
      truck,
      question: { pose: { travel: 0, steer: 0 } },
      given: null,
    };
    work.want(me, [shown]);
    busy().done({ of: "the pose" });
    work.want(me, []);
    const ended = answerOnce({ ...shown, question: { pose: null } }, new AbortController().signal, () => {});
    busy().done({ of: "all poses" });
    expect(await ended).toEqual({ of: "all poses" });
  });

  it("is none where it is given up while the longer search goes on, or where there never was one", async () => {
    const givenUp = saving(6.4);
    busy().done({ of: 2 }, true);
    givenUp.giveUp.abort();
    await givenUp.ended;
    expect(givenUp.came).toEqual(["given up"]);
    const none = saving(6.5);
    busy().crash("out of memory");
    await none.ended;
    expect(none.came).toEqual(["out of memory"]);
  });
});
