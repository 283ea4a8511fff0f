import { type CheckReport, checkOf, type KnownPose } from "../../studies/reports/check.ts";
import { AnswerCache, type Answered, type Entry, followsPose, LONGER, type Wish } from "./answerCache.ts";
import type { Answer, JobName, Question } from "./jobs.ts";
import { type Ended, WorkClient, type WorkerLike } from "./workClient.ts";

export interface WorkRoomOptions {
  readonly startWorker: () => WorkerLike;
  /** Workers for what takes long; what follows the pose has one of its own. */
  readonly workers: number;
  /** Workers at most that one check is shared out to. */
  readonly sharers: number;
  /** Given to a search unless somebody asks for a longer one. */
  readonly seconds: number;
  /** The pose somebody sees; default none. */
  readonly poseShown?: () => KnownPose | null;
}

/** Bad poses found last that a check begins with: those of a truck's parts, and of a few like it. */
const MOST_KNOWN = 32;

/** ms that a search may go on once nobody wants it any more: what is nearly done is kept for later. */
const GRACE = 500;

/** A search under way. */
interface Running {
  readonly entry: Entry;
  /** What was wanted when it began. */
  readonly wish: Wish<JobName>;
  readonly key: string;
  readonly seconds: number;
  readonly since: number;
  /** Those that are still at it. */
  readonly clients: Set<WorkClient>;
}

/**
 * The one place where the page has long work done. Whoever shows an answer says what it wants, for as long as it does; each
 * question of a truck is worked out once, whoever wants it, and kept. What nobody wants any more is ended, so of the many
 * trucks and poses of a drag only those are worked out for which there is time. What the time given has cut short goes on by
 * itself, twice at most, while nothing else waits for a worker; for more somebody has to ask.
 */
export class WorkRoom {
  readonly #cache: AnswerCache;
  readonly #sharers: number;
  readonly #poseShown: () => KnownPose | null;
  /** Where parts came nearest on the trucks checked last, the newest first. */
  #bad: readonly KnownPose[] = [];
  /** For what follows the pose; for the rest. */
  readonly #quick: readonly WorkClient[];
  readonly #long: readonly WorkClient[];
  readonly #wanted = new Map<object, readonly Entry[]>();
  readonly #listeners = new Set<() => void>();
  #running: readonly Running[] = [];
  /** Whether anything was answered yet. */
  #hasAnswered = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor({ startWorker, workers, sharers, seconds, poseShown = () => null }: WorkRoomOptions) {
    this.#sharers = sharers;
    this.#poseShown = poseShown;
    this.#cache = new AnswerCache(seconds);
    this.#quick = [new WorkClient(startWorker)];
    this.#long = Array.from({ length: workers }, () => new WorkClient(startWorker));
  }

  /** Has a worker read its program before there is anything to ask: while the page is put together. */
  start(): void {
    this.#long[0]?.start();
  }

  /** Tells of every change of any answer. @returns ends that */
  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  };

  /** What is known of a question so far. Asks for nothing. */
  of<J extends JobName>(wish: Wish<J>): Answered<J> {
    return this.#cache.entry(wish).shown;
  }

  /** Has these answered, the first first, until the same one wants others; what it wanted before it wants no more. */
  want(who: object, wishes: readonly Wish<JobName>[]): void {
    const entries = wishes.map((wish) => {
      const entry = this.#cache.entry(wish);
      const key = this.#cache.keyOf(wish);
      if (entry.key !== key)
        Object.assign(entry, { wish, key, asked: this.#cache.secondsFor(wish.job), goesOn: "byItself" });
      return entry;
    });
    if (entries.length > 0) this.#wanted.set(who, entries);
    else this.#wanted.delete(who);
    this.#schedule();
  }

  /** Whether what is wanted is still to be answered, or was cut short in the time that any search is given and is searched longer. */
  isToCome(wish: Wish<JobName>): boolean {
    const entry = this.#cache.entry(wish);
    const isFirst =
      entry.answeredKey !== entry.key || entry.shown.seconds <= this.#cache.secondsFor(wish.job);
    return isFirst && isOpen(entry);
  }

  /** Searches again with more time. The answer there is stays until the new one comes. */
  searchLonger({ wish, seconds }: Answered<JobName>): void {
    const entry = this.#cache.entry(wish);
    entry.goesOn = "asAsked";
    this.#goOn(entry, LONGER * seconds);
    this.#schedule();
  }

  /** Ends a longer search at once. */
  cancel({ wish, seconds }: Answered<JobName>): void {
    const entry = this.#cache.entry(wish);
    entry.asked = seconds;
    entry.goesOn = "stopped";
    for (const one of this.#running) if (one.entry === entry) this.#stop(one);
    this.#show(entry, { underWay: null });
    this.#schedule();
  }

  #schedule(): void {
    clearTimeout(this.#timer);
    const wanted = new Set([...this.#wanted.values()].flat());
    const now = performance.now();
    for (const one of this.#running) {
      if (wanted.has(one.entry) && one.entry.key === one.key) continue;
      if (now - one.since >= GRACE) this.#stop(one);
      else this.#timer = setTimeout(() => this.#schedule(), GRACE);
    }
    // The page's first verdict is waited for most: nothing takes turns with it.
    const isFirst =
      !this.#hasAnswered && [...wanted].some((entry) => entry.wish.job === "check" && isOpen(entry));
    const open = [...wanted].filter(
      (entry) => isOpen(entry) && !this.#running.some((one) => one.entry === entry),
    );
    for (const entry of open.sort((a, b) => Number(isExtra(a)) - Number(isExtra(b)))) {
      if (isFirst && entry.wish.job !== "check") continue;
      const clients = followsPose(entry.wish) ? this.#quick : this.#long;
      const free = () => clients.filter(({ isFree }) => isFree);
      if (free().length === 0 && !isExtra(entry)) this.#giveWay(clients);
      if (free().length > 0) this.#begin(entry, free());
    }
  }

  /** What goes on by itself leaves its workers to what somebody waits for, and begins anew after it. */
  #giveWay(clients: readonly WorkClient[]): void {
    const one = this.#running.find(
      (each) => isExtra(each.entry) && clients.some((client) => each.clients.has(client)),
    );
    if (!one) return;
    this.#stop(one);
    this.#goOn(one.entry, one.seconds);
  }

  /**
   * Has it searched for so long when its turn comes, and says so in one go with what else has changed; what ended a longer search
   * before is past.
   */
  #goOn(entry: Entry, seconds: number, change: Partial<Answered<JobName>> = {}): void {
    entry.asked = seconds;
    this.#show(entry, { ...change, failure: null, underWay: { seconds, since: null, share: null } });
  }

  #begin(entry: Entry, free: readonly WorkClient[]): void {
    const { wish, key, asked: seconds } = entry;
    const since = performance.now();
    // What somebody waits for leaves no core to the page's other searches; a longer search of what is answered leaves one.
    const draws = entry.answeredKey === key ? Math.max(1, free.length - 1) : free.length;
    // A check comes with every change.
    const most = wish.job === "check" ? this.#sharers : wish.job === "odds" ? draws : 1;
    const clients = free.slice(0, most);
    const one: Running = { entry, wish, key, seconds, since, clients: new Set(clients) };
    this.#running = [...this.#running, one];
    const show = (share: number | null) => this.#show(entry, { underWay: { seconds, since, share } });
    show(null);
    if (clients.length > 1 && wish.job === "odds") this.#shareOutDraws(one, clients);
    else if (clients.length > 1) this.#shareOut(one, clients);
    else {
      const asked = wish.job === "check" ? { ...wish, question: this.#known() } : wish;
      clients[0]!.run({ ...asked, seconds, onProgress: show, onEnd: (ended) => this.#end(one, ended) });
    }
  }

  /** What a check that is cut short must not deny: the pose that is seen, and the bad ones found before. */
  #known(): readonly KnownPose[] {
    const shown = this.#poseShown();
    return shown === null ? this.#bad : [shown, ...this.#bad];
  }

  #learn({ parts }: CheckReport): void {
    const found = parts.map(({ travel, steer }) => ({ travel, steer }));
    const isNew = (pose: KnownPose) =>
      !found.some(({ travel, steer }) => travel === pose.travel && steer === pose.steer);
    this.#bad = [...found, ...this.#bad.filter(isNew)].slice(0, MOST_KNOWN);
  }

  /** A check's pairs to several workers; the answer does not depend on how many. */
  #shareOut(one: Running, clients: readonly WorkClient[]): void {
    const { wish, seconds } = one;
    const of = clients.length;
    const gather = this.#gathering<"checkShare">(one, of, (shares) => {
      const answer = checkOf(wish.truck.model, shares);
      this.#end(one, { ok: true, answer, isCut: answer.cutShort === true });
    });
    const known = this.#known();
    for (const [at, client] of clients.entries()) {
      const task = {
        job: "checkShare",
        truck: wish.truck,
        question: { at, of, known },
        given: null,
      } as const;
      client.run({ ...task, seconds, onProgress() {}, onEnd: (ended) => gather(client, ended) });
    }
  }

  /** Draws of odds to several workers, put together by one of them; the answer does not depend on how many. */
  #shareOutDraws(one: Running, clients: readonly WorkClient[]): void {
    const { wish, seconds, entry } = one;
    const { truck } = wish;
    const { document } = wish.question as Question<"odds">;
    const of = clients.length;
    const done = clients.map(() => 0);
    const gather = this.#gathering<"oddsShare">(one, of, (shares, client) => {
      one.clients.add(client);
      const together = { job: "odds", truck, question: { document, shares }, given: null } as const;
      client.run({ ...together, seconds, onProgress() {}, onEnd: (whole) => this.#end(one, whole) });
    });
    for (const [at, client] of clients.entries()) {
      const task = { job: "oddsShare", truck, question: { document, at, of }, given: null } as const;
      const onProgress = (share: number) => {
        done[at] = share;
        const all = done.reduce((sum, each) => sum + each, 0) / of;
        this.#show(entry, { underWay: { seconds, since: one.since, share: all } });
      };
      client.run({ ...task, seconds, onProgress, onEnd: (ended) => gather(client, ended) });
    }
  }

  /** Takes how each worker's share ended; `whole` goes on once all are there, and the first that fails ends the others. */
  #gathering<J extends "checkShare" | "oddsShare">(
    one: Running,
    of: number,
    whole: (shares: readonly Answer<J>[], last: WorkClient) => void,
  ): (client: WorkClient, ended: Ended<J>) => void {
    const shares: Answer<J>[] = [];
    return (client, ended) => {
      one.clients.delete(client);
      if (!ended.ok) {
        for (const other of one.clients) other.stop();
        this.#end(one, ended);
      } else if (shares.push(ended.answer) < of) this.#schedule();
      else whole(shares, client);
    };
  }

  #end(one: Running, ended: Ended<JobName>): void {
    const { entry, wish, key, seconds } = one;
    this.#hasAnswered = true;
    this.#running = this.#running.filter((each) => each !== one);
    const isLonger = entry.answeredKey === key;
    entry.answeredKey = key;
    if (ended.ok) {
      const { answer, isCut } = ended;
      if (wish.job === "check") this.#learn(answer as CheckReport);
      const came = { answer, question: wish.question, isCut, seconds };
      const next = isCut && entry.key === key ? this.#cache.goesOnFor(wish.job, seconds) : null;
      if (next !== null && entry.goesOn !== "stopped") {
        entry.goesOn = "byItself";
        this.#goOn(entry, next, came);
      } else this.#show(entry, { ...came, failure: null, underWay: null });
    } else {
      // Of a longer search that failed the answer before stands.
      const gone = isLonger ? {} : { answer: null, question: null, isCut: false };
      this.#show(entry, { ...gone, failure: ended.message, underWay: null });
    }
    this.#cache.forgetOld(entry, (each) => [...this.#wanted.values()].some((all) => all.includes(each)));
    this.#schedule();
  }

  #stop(one: Running): void {
    for (const client of one.clients) client.stop();
    this.#running = this.#running.filter((each) => each !== one);
    this.#show(one.entry, { underWay: null });
  }

  #show(entry: Entry, change: Partial<Answered<JobName>>): void {
    entry.shown = { ...entry.shown, wish: entry.wish, ...change };
    for (const listener of this.#listeners) listener();
  }
}

/** A longer search that nobody has asked for. */
function isExtra({ key, answeredKey, goesOn }: Entry): boolean {
  return answeredKey === key && goesOn === "byItself";
}

function isOpen({ key, answeredKey, asked, shown }: Entry): boolean {
  return answeredKey !== key || (shown.isCut && shown.failure === null && shown.seconds < asked);
}
