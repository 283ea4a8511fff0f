import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createWorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import { type Wish, whyNone } from "../../../src/app/work/answerCache.ts";
import { answererOf } from "../../../src/app/work/answerer.ts";
import type { JobName } from "../../../src/app/work/jobs.ts";
import { WorkRoom } from "../../../src/app/work/workRoom.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { exampleText } from "../exampleText.ts";
import { type FakeWorker, fakeWorkers } from "./fakeWorkers.ts";

const store = createWorkbenchStore(exampleText, "test.json");
const [one, two, three, ...more] = [6, 6.1, 6.2, 6.3, 6.4, 6.5].map((hubFace) => {
  store.getState().editField(["knuckle", "hubFace"], hubFace);
  return store.getState().truck!;
});
if (!one || !two || !three) throw new Error("the test's trucks go together");

const check = (truck = one): Wish<"check"> => ({ job: "check", truck, question: null, given: null });
const map = (truck = one): Wish<"map"> => ({ job: "map", truck, question: null, given: null });
const pose = (travel: number): Wish<"poseLimits"> => ({
  job: "poseLimits",
  truck: one,
  given: null,
  question: { travel, steer: 0 },
});

/** A room with as many workers for long jobs; the one for the pose is not counted. */
function opened(workers = 1) {
  const fakes = fakeWorkers();
  const room = new WorkRoom({ startWorker: fakes.startWorker, workers, sharers: workers, seconds: 2 });
  const asked = (job: JobName) =>
    fakes.workers.flatMap(({ requests }) => requests).filter((each) => each.job === job);
  return { ...fakes, room, asked };
}

const me = {};
const other = {};

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe("the work room", () => {
  it("asks once, with what survives the way to a worker, and gets what the study answers", () => {
    const { room, workers } = opened();
    room.want(me, [check()]);
    room.want(other, [check()]);
    expect(room.of(check()).underWay).toMatchObject({ seconds: 2, share: null });
    answererOf((reply) => workers[0]!.say(reply))({ ...workers[0]!.requests[0]!, seconds: null });
    const { answer, isCut, underWay, seconds } = room.of(check());
    expect(answer).toEqual(checkClearance(one.model));
    expect([isCut, underWay, seconds]).toEqual([false, null, 2]);
    room.want(me, []);
    room.want(me, [check()]);
    expect(workers[0]!.requests).toHaveLength(1);
  });

  it("has a check look at the pose that is seen, and where the truck before came nearest, however it is shared out", () => {
    for (const sharers of [1, 2]) {
      const { startWorker, workers } = fakeWorkers();
      const seen = { travel: 88.9, steer: -0.9 };
      const room = new WorkRoom({ startWorker, workers: 2, sharers, seconds: 2, poseShown: () => seen });
      room.want(me, [check()]);
      const questions = () =>
        workers.flatMap(({ requests }) => requests.slice(-1).map(({ question }) => question));
      if (sharers === 1) expect(questions()).toEqual([[seen]]);
      else expect(questions()).toMatchObject([{ known: [seen] }, { known: [seen] }]);
      for (const worker of workers)
        answererOf((reply) => worker.say(reply))({ ...worker.requests.at(-1)!, seconds: null });
      const { parts } = checkClearance(one.model);
      const bad = parts.map(({ travel, steer }) => ({ travel, steer }));
      room.want(me, [check(two)]);
      const [asked] = questions();
      const known = sharers === 1 ? asked : (asked as unknown as { known: unknown }).known;
      expect(known).toEqual([seen, ...bad]);
    }
  });

  it("tells of each change, and keeps what it told the same object until one comes", () => {
    const { room, workers } = opened();
    const heard = vi.fn();
    const unfollow = room.subscribe(heard);
    room.want(me, [check()]);
    const before = room.of(check());
    expect(room.of(check())).toBe(before);
    workers[0]!.progress(0.4);
    expect(room.of(check()).underWay).toMatchObject({ share: 0.4 });
    expect(heard).toHaveBeenCalledTimes(2);
    unfollow();
    workers[0]!.done({});
    expect(heard).toHaveBeenCalledTimes(2);
  });

  it("answers what was wanted first first, beside each other as far as there are workers", () => {
    const { room, workers, asked } = opened(2);
    room.want(me, [map(), map(two), map(three)]);
    expect(asked("map")).toHaveLength(2);
    workers[1]!.done({});
    expect(asked("map")).toHaveLength(3);
    expect(workers[1]!.requests.map(({ truck }) => truck?.setup)).toEqual([two.setup, three.setup]);
  });

  it("gives the page's first check all there is, and goes on with the rest once it is there", () => {
    const { room, workers, asked } = opened(2);
    room.start();
    expect(workers.map(({ requests }) => requests)).toEqual([[]]);
    room.want(me, [check()]);
    room.want(other, [map(), pose(0)]);
    expect([asked("map"), asked("poseLimits")]).toEqual([[], []]);
    for (const worker of workers) answererOf((reply) => worker.say(reply))(worker.requests[0]!);
    expect(room.of(check()).answer).toEqual(checkClearance(one.model));
    expect([asked("map").length, asked("poseLimits").length]).toEqual([1, 1]);
    // Of later ones nothing waits.
    room.want(me, [check(two)]);
    room.want(other, [map(), pose(1)]);
    expect(asked("checkShare").length + asked("check").length).toBe(3);
    expect(room.of(map()).underWay).not.toBeNull();
  });

  it("passes over the trucks of a drag that are gone when a worker is free", () => {
    const { room, workers } = opened();
    for (const truck of [one, two, three]) room.want(me, [map(truck)]);
    expect(workers).toHaveLength(1);
    workers[0]!.done({ of: 1 });
    expect(workers[0]!.requests.map(({ truck }) => truck?.setup)).toEqual([one.setup, three.setup]);
    // What came of a truck that nobody looks at is there when it is looked at again.
    expect(room.of(map()).answer).toEqual({ of: 1 });
    expect(room.of(map(three)).answer).toBeNull();
  });

  it("ends what nobody wants any more, and begins the newer question with a new worker", () => {
    const { room, workers } = opened();
    room.want(me, [check()]);
    vi.advanceTimersByTime(2000);
    room.want(me, [check(two)]);
    expect(workers[0]!.isEnded).toBe(true);
    expect(workers[1]!.requests.map(({ truck }) => truck?.setup)).toEqual([two.setup]);
    workers[0]!.done({});
    expect([room.of(check()).answer, room.of(check(two)).answer]).toEqual([null, null]);
  });

  it("gives it a moment to finish first", () => {
    const { room, workers } = opened();
    room.want(me, [check()]);
    vi.advanceTimersByTime(100);
    room.want(me, [check(two)]);
    vi.advanceTimersByTime(300);
    expect(workers).toHaveLength(1);
    vi.advanceTimersByTime(300);
    expect(workers.map(({ isEnded }) => isEnded)).toEqual([true, false]);
    expect(workers[1]!.requests).toHaveLength(1);
  });

  it("takes no reply twice, and none to another question", () => {
    const { room, workers } = opened();
    room.want(me, [map(), map(two)]);
    const { id } = workers[0]!.requests[0]!;
    workers[0]!.say({ kind: "done", id: id + 7, answer: null, isCut: false });
    expect(room.of(map()).underWay).not.toBeNull();
    workers[0]!.done({});
    workers[0]!.say({ kind: "done", id, answer: null, isCut: false });
    expect(room.of(map(two)).underWay).not.toBeNull();
  });

  it("says why there is no answer, does not ask again, and goes on with the next", () => {
    const { room, workers } = opened();
    room.want(me, [map(), map(two)]);
    workers[0]!.crash("out of memory");
    expect(room.of(map())).toMatchObject({ answer: null, failure: "out of memory" });
    expect(whyNone(room.of(map()))).toBe("out of memory");
    expect(workers[1]!.requests[0]!.truck?.setup).toEqual(two.setup);
    workers[1]!.say({ kind: "failed", id: workers[1]!.requests[0]!.id, message: "no" });
    room.want(me, [map(), map(two)]);
    expect(workers.flatMap(({ requests }) => requests)).toHaveLength(2);
  });
});

describe("a check shared out to several workers", () => {
  const answerBy = (worker: FakeWorker) =>
    answererOf((reply) => worker.say(reply))({ ...worker.requests.at(-1)!, seconds: null });

  it("answers as one would", () => {
    const { room, workers } = opened(3);
    room.want(me, [check()]);
    expect(workers.map(({ requests }) => requests[0]!.question)).toEqual(
      [0, 1, 2].map((at) => ({ at, of: 3, known: [] })),
    );
    for (const worker of [...workers].reverse()) answerBy(worker);
    expect(room.of(check()).answer).toEqual(checkClearance(one.model));
    expect(room.of(check()).isCut).toBe(false);
  });

  it("lets who is done first begin with the next, and stops with all its workers", () => {
    const { room, workers, asked } = opened(3);
    // The page's first check is no such one.
    room.want(me, [check(two)]);
    for (const worker of [...workers]) answerBy(worker);
    room.want(me, [check(), map()]);
    answerBy(workers[2]!);
    expect(asked("map")).toHaveLength(1);
    room.want(me, [map()]);
    vi.advanceTimersByTime(600);
    expect(workers.map(({ isEnded }) => isEnded)).toEqual([true, true, false]);
    workers[2]!.done({ of: 1 });
    expect(room.of(map()).answer).toEqual({ of: 1 });
  });

  it("fails as a whole when one of them fails", () => {
    const { room, workers } = opened(2);
    room.want(me, [check()]);
    workers[0]!.crash("out of memory");
    expect(room.of(check())).toMatchObject({ answer: null, failure: "out of memory" });
    expect(workers[1]!.isEnded).toBe(true);
  });
});

describe("an answer that was cut short", () => {
  function cutShort() {
    const it = opened();
    it.room.want(me, [map()]);
    it.workers[0]!.done({ of: 2 }, true);
    const seconds = () => it.asked("map").map((each) => each.seconds);
    return { ...it, seconds };
  }

  it("is searched longer by itself, twice at most, and stays until the better one comes", () => {
    const { room, workers, seconds } = cutShort();
    expect(room.of(map())).toMatchObject({ answer: { of: 2 }, isCut: true, underWay: { seconds: 10 } });
    workers[0]!.done({ of: 10 }, true);
    expect(room.of(map())).toMatchObject({ answer: { of: 10 }, isCut: true, underWay: { seconds: 50 } });
    workers[0]!.done({ of: 50 }, true);
    expect(room.of(map())).toMatchObject({ answer: { of: 50 }, isCut: true, underWay: null });
    room.want(me, [map()]);
    expect(seconds()).toEqual([2, 10, 50]);
    room.searchLonger(room.of(map()));
    workers[0]!.done({ of: 250 });
    expect(room.of(map())).toMatchObject({ answer: { of: 250 }, isCut: false, seconds: 250 });
    expect(seconds()).toEqual([2, 10, 50, 250]);
  });

  it("goes on only while nothing else waits: it gives up its worker, says that it waits, and begins anew", () => {
    const { room, workers, seconds } = cutShort();
    room.want(other, [map(two)]);
    expect(workers.map(({ isEnded }) => isEnded)).toEqual([true, false]);
    expect(workers[1]!.requests.map(({ truck }) => truck?.setup)).toEqual([two.setup]);
    expect(room.of(map())).toMatchObject({ answer: { of: 2 }, underWay: { seconds: 10, since: null } });
    workers[1]!.done({});
    expect(room.of(map()).underWay?.since).not.toBeNull();
    expect(seconds()).toEqual([2, 10, 2, 10]);
  });

  it("is not searched on once nobody looks at it, and is when somebody does again", () => {
    const { room, workers, seconds } = cutShort();
    room.want(me, []);
    vi.advanceTimersByTime(600);
    expect(workers[0]!.isEnded).toBe(true);
    expect(room.of(map()).underWay).toBeNull();
    room.want(me, [map()]);
    expect(seconds()).toEqual([2, 10, 10]);
  });

  it("can be stopped at once, which a worker that does not yield cannot hold up, and stays so until somebody asks", () => {
    const { room, workers, seconds } = cutShort();
    room.cancel(room.of(map()));
    expect(workers[0]!.isEnded).toBe(true);
    expect(room.of(map())).toMatchObject({ answer: { of: 2 }, isCut: true, underWay: null });
    room.want(me, [map()]);
    expect(seconds()).toEqual([2, 10]);
    room.searchLonger(room.of(map()));
    expect(workers[1]!.requests[0]!.truck?.setup).toEqual(one.setup);
    // What somebody asked for gives way to nothing.
    room.want(other, [map(two)]);
    expect(workers[1]!.isEnded).toBe(false);
    expect(seconds()).toEqual([2, 10, 10]);
  });

  it("stands when the longer search fails", () => {
    const { room, workers, seconds } = cutShort();
    workers[0]!.crash("gave up");
    expect(room.of(map())).toMatchObject({
      answer: { of: 2 },
      isCut: true,
      failure: "gave up",
      underWay: null,
    });
    // What is shown in place of an answer says nothing of it.
    expect(whyNone(room.of(map()))).toBeNull();
    room.want(me, [map()]);
    expect(seconds()).toEqual([2, 10]);
  });

  it("is searched longer again where somebody asks after one that failed", () => {
    const { room, workers, seconds } = cutShort();
    workers[0]!.crash("gave up");
    room.searchLonger(room.of(map()));
    expect(room.of(map())).toMatchObject({ answer: { of: 2 }, failure: null, underWay: { seconds: 10 } });
    expect(seconds()).toEqual([2, 10, 10]);
    workers[1]!.done({ of: 10 });
    expect(room.of(map())).toMatchObject({ answer: { of: 10 }, isCut: false, underWay: null });
  });

  it("waits for its turn where somebody asks while another search goes on, and says so", () => {
    const { room, workers } = cutShort();
    room.cancel(room.of(map()));
    room.want(other, [map(two)]);
    room.searchLonger(room.of(map()));
    expect(room.of(map()).underWay).toEqual({ seconds: 10, since: null, share: null });
    workers[1]!.done({});
    expect(room.of(map()).underWay?.since).not.toBeNull();
  });

  it("goes on no longer where it had more time from the start", () => {
    const { room, workers, asked } = opened();
    const wish: Wish<"change"> = { job: "change", truck: one, question: null as never, given: null };
    room.want(me, [wish]);
    workers[0]!.done({}, true);
    workers[0]!.done({}, true);
    expect(room.of(wish)).toMatchObject({ isCut: true, underWay: null });
    expect(asked("change").map(({ seconds }) => seconds)).toEqual([10, 50]);
  });
});

describe("odds shared out to several workers", () => {
  const odds: Wish<"odds"> = { job: "odds", truck: one, question: { document: {} }, given: null };

  it("take all of them, and searched longer leave one to what else is waited for", () => {
    const { room, workers, asked } = opened(3);
    room.want(me, [odds]);
    expect(asked("oddsShare").map(({ question }) => question)).toMatchObject(
      [0, 1, 2].map((at) => ({ at, of: 3 })),
    );
    for (const worker of [...workers]) worker.done({});
    workers[2]!.done({ of: 10 }, true);
    // It goes on by itself; then somebody asks.
    room.cancel(room.of(odds));
    room.searchLonger(room.of(odds));
    const longer = () => asked("oddsShare").filter(({ seconds }) => seconds === 50);
    expect(
      longer()
        .slice(-2)
        .map(({ question }) => question),
    ).toMatchObject([0, 1].map((at) => ({ at, of: 2 })));
    room.want(other, [map(two)]);
    expect(asked("map")).toHaveLength(1);
    expect(room.of(odds).underWay).toMatchObject({ seconds: 50, since: expect.any(Number) });
  });

  it("are searched longer by the only one there is", () => {
    const { room, workers, asked } = opened(1);
    room.want(me, [odds]);
    workers[0]!.done({}, true);
    expect(asked("odds").map(({ seconds }) => seconds)).toEqual([10, 50]);
  });
});

describe("what follows the pose", () => {
  it("is asked one at a time, the last of what a drag went through, beside a long search", () => {
    const { room, workers, asked } = opened();
    room.want(other, [map()]);
    for (const travel of [1, 2, 3]) room.want(me, [pose(travel)]);
    expect(asked("poseLimits")).toHaveLength(1);
    workers[1]!.done({ travel: 1 });
    // The pose before stays to be shown, and says what it is of.
    expect(room.of(pose(3))).toMatchObject({ answer: { travel: 1 }, question: { travel: 1 } });
    expect(asked("poseLimits").map(({ question }) => question)).toEqual([
      { travel: 1, steer: 0 },
      { travel: 3, steer: 0 },
    ]);
    workers[1]!.done({ travel: 3 });
    expect(room.of(pose(3))).toMatchObject({ answer: { travel: 3 }, question: { travel: 3 } });
    expect(asked("poseLimits")).toHaveLength(2);
  });

  it("hands the truck and what else is given over once", () => {
    const { room, workers } = opened();
    const envelope = { choice: "whole", travel: 0, edges: [], sides: [] } as const;
    const section = (at: number, given: typeof envelope | null): Wish<"section"> => ({
      job: "section",
      truck: one,
      given,
      question: { plane: { axis: "x", at }, travel: 0, steer: 0 },
    });
    for (const wish of [
      ...[section(1, null), section(1, envelope), section(2, envelope), section(2, null)],
    ]) {
      room.want(me, [wish]);
      workers[0]!.done({});
    }
    expect(workers[0]!.requests.map((each) => ["truck" in each, "given" in each])).toEqual([
      [true, false],
      [false, true],
      [false, false],
      [false, true],
    ]);
  });
});

describe("large answers", () => {
  it("are kept of the trucks asked about last; small ones of all", () => {
    const { room, workers } = opened();
    const trucks = [one, two, three, ...more];
    for (const truck of trucks) {
      room.want(me, [check(truck), map(truck)]);
      workers[0]!.done({});
      workers[0]!.done({});
    }
    expect(trucks.map((truck) => room.of(map(truck)).answer !== null)).toEqual([
      ...[false, false, true, true, true, true],
    ]);
    expect(trucks.every((truck) => room.of(check(truck)).answer !== null)).toBe(true);
  });
});
