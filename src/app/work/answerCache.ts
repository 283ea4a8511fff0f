import type { Motion, Truck } from "../state/truck.ts";
import type { Answer, Given, JobName, Question } from "./jobs.ts";

/** A question about a truck that somebody on the page wants answered. */
export interface Wish<J extends JobName> {
  readonly job: J;
  readonly truck: Truck;
  readonly question: Question<J>;
  readonly given: Given<J>;
}

/** What is known of a wish; the same object until something of it changes. */
export interface Answered<J extends JobName> {
  readonly wish: Wish<J>;
  /** null = none yet. */
  readonly answer: Answer<J> | null;
  /** What `answer` is an answer to: of what follows the pose perhaps the pose before. */
  readonly question: Question<J> | null;
  /** Why there will be no more; null = all is well. */
  readonly failure: string | null;
  /** The time given was spent before the answer was all of it. */
  readonly isCut: boolean;
  /** Given for the answer. */
  readonly seconds: number;
  /** A search is under way, or waits for its turn (`since` null, else of `performance.now`). */
  readonly underWay: {
    readonly seconds: number;
    readonly since: number | null;
    /** Where the job itself tells how far it is. */
    readonly share: number | null;
  } | null;
}

/**
 * Why there is no answer, nor will be one; null = there is one, or it is worked out. Of a longer search that failed the answer before
 * stands, and the note of what is cut short tells the failure.
 */
export function whyNone({ answer, failure }: Pick<Answered<JobName>, "answer" | "failure">): string | null {
  return answer === null ? failure : null;
}

/** Jobs about a pose. */
const AT_A_POSE: ReadonlySet<JobName> = new Set<JobName>(["poseLimits", "section", "loads"]);

/** Whether a question is about the pose shown: worked out anew with every move, so only the last answer is kept. */
export function followsPose({ job, question }: Pick<Wish<JobName>, "job" | "question">): boolean {
  const isOfAll = job === "loads" && (question as Question<"loads">).pose === null;
  return AT_A_POSE.has(job) && !isOfAll;
}

/**
 * Jobs that read nothing but what moves: a note beside the truck, as an order or a reading of the jig, leaves their answers standing.
 * What odds read besides, the jig's tolerances, stands in their question.
 */
const OF_MOTION: ReadonlySet<JobName> = new Set<JobName>([
  ...(["check", "checkShare", "map", "limits", "geometry", "poseLimits", "wayEnds", "beforeLocks"] as const),
  "heights",
  ...(["envelope", "section", "window", "solve", "chart", "change", "odds", "oddsShare"] as const),
]);

/** Jobs whose answers are large: kept of the trucks asked about last. */
const LARGE: ReadonlySet<JobName> = new Set<JobName>(["map", "envelope", "section"]);
const LARGE_KEPT = 4;

/**
 * What has more: of an envelope that was cut short nothing can be shown, and whoever asked for it sees how far it is; changes are
 * many searches one after the other, and so are the cells of a chart and the draws of odds.
 */
const MORE: ReadonlySet<JobName> = new Set<JobName>(["envelope", "change", "chart", "odds", "solve"]);
const MORE_TIMES = 5;

/** How many times the seconds before a longer search is given. */
export const LONGER = 5;

/** One place of the cache. */
export interface Entry<J extends JobName = JobName> {
  /** What is wanted there now. */
  wish: Wish<J>;
  /** Of `wish`: alike for the same question. */
  key: string;
  /** The key that was answered, or failed; null = none. */
  answeredKey: string | null;
  /** Seconds that somebody wants spent on it, or that it goes on to by itself. */
  asked: number;
  /** How it goes on once cut short: by itself while nothing else waits, as somebody asked, or no more. */
  goesOn: "byItself" | "asAsked" | "stopped";
  shown: Answered<J>;
}

/** Answers by truck and job, for as long as the truck, or one that moves alike, is kept somewhere. */
export class AnswerCache {
  readonly #places = new WeakMap<Truck | Motion, Map<string, Entry>>();
  readonly #numbers = new WeakMap<object, number>();
  #lastNumber = 0;
  /** Trucks with large answers, the one answered last at the end. */
  readonly #large: (Truck | Motion)[] = [];

  constructor(private readonly seconds: number) {}

  /** The entry that answers a wish, or will. */
  entry<J extends JobName>(wish: Wish<J>): Entry<J> {
    const of = keptBy(wish);
    const ofTruck = this.#places.get(of) ?? new Map<string, Entry>();
    this.#places.set(of, ofTruck);
    const key = this.keyOf(wish);
    const place = followsPose(wish) ? wish.job : key;
    const known = ofTruck.get(place);
    if (known !== undefined) return known as unknown as Entry<J>;
    const shown: Answered<J> = {
      wish,
      answer: null,
      question: null,
      failure: null,
      isCut: false,
      seconds: this.secondsFor(wish.job),
      underWay: null,
    };
    const made: Entry<J> = { wish, key, answeredKey: null, asked: shown.seconds, goesOn: "byItself", shown };
    ofTruck.set(place, made as unknown as Entry);
    return made;
  }

  /**
   * Seconds that a search is given unless somebody asks for a longer one. What is saved is given up by a press alone: half of a
   * file is none, and a slow machine is no reason for it.
   */
  secondsFor(job: JobName): number {
    if (job === "report") return Number.POSITIVE_INFINITY;
    return MORE.has(job) ? MORE_TIMES * this.seconds : this.seconds;
  }

  /** Seconds of the longer search that follows by itself when one of so many was cut short; null = somebody has to ask. */
  goesOnFor(job: JobName, seconds: number): number | null {
    const next = LONGER * seconds;
    return job !== "report" && next <= LONGER * LONGER * this.seconds ? next : null;
  }

  keyOf({ job, question, given }: Wish<JobName>): string {
    return `${job} ${JSON.stringify(question)} ${given === null ? "" : this.#numberOf(given)}`;
  }

  /** Forgets large answers of trucks that were answered long ago. @param isWanted keeps what somebody looks at */
  forgetOld({ wish }: Entry, isWanted: (entry: Entry) => boolean): void {
    if (!LARGE.has(wish.job)) return;
    const of = keptBy(wish);
    const before = this.#large.indexOf(of);
    if (before >= 0) this.#large.splice(before, 1);
    this.#large.push(of);
    if (this.#large.length <= LARGE_KEPT) return;
    const places = this.#places.get(this.#large.shift()!);
    for (const [place, entry] of places ?? [])
      if (LARGE.has(entry.wish.job) && !isWanted(entry)) places?.delete(place);
  }

  #numberOf(thing: object): number {
    const known = this.#numbers.get(thing);
    if (known !== undefined) return known;
    this.#numbers.set(thing, ++this.#lastNumber);
    return this.#lastNumber;
  }
}

/** What the answer to a wish is kept by. */
function keptBy({ job, truck }: Wish<JobName>): Truck | Motion {
  return OF_MOTION.has(job) ? truck.motion : truck;
}
