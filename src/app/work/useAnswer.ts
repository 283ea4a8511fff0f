import { useEffect, useMemo, useRef, useSyncExternalStore } from "react";
import type { Truck } from "../state/truck.ts";
import type { Answered, Wish } from "./answerCache.ts";
import type { Answer, Given, JobName, Question } from "./jobs.ts";
import { work } from "./work.ts";

type Asked<J extends JobName> = {
  /** null where the job asks nothing more than the truck. */
  readonly question: Question<J>;
  /** What is handed over beside the truck; default nothing. */
  readonly given?: Given<J>;
};

const NOTHING_MORE = { question: null } as const;

/**
 * What is known of a job's answer for each of some trucks, and wants it as long as this is on the page.
 * @param trucks the same list until it changes; the first is answered first
 */
export function useAnswers<J extends JobName>(
  job: J,
  trucks: readonly Truck[],
  { question, given = null }: Asked<J> = NOTHING_MORE as Asked<J>,
): readonly Answered<J>[] {
  const asked = JSON.stringify(question);
  const wishes = useMemo(
    () => trucks.map((truck): Wish<J> => ({ job, truck, question: JSON.parse(asked), given })),
    [job, trucks, asked, given],
  );
  return useWishes(wishes, true);
}

/**
 * The same of many questions about one truck, the first answered first. @param questions the same list until it changes
 * @param isWanted false = what is known of them is told, and no more is worked out
 */
export function useManyAnswers<J extends JobName>(
  job: J,
  truck: Truck,
  questions: readonly Question<J>[],
  isWanted: boolean,
): readonly Answered<J>[] {
  const wishes = useMemo(
    () => questions.map((question): Wish<J> => ({ job, truck, question, given: null as Given<J> })),
    [job, truck, questions],
  );
  return useWishes(wishes, isWanted);
}

const NO_WISHES: readonly Wish<JobName>[] = [];

function useWishes<J extends JobName>(wishes: readonly Wish<J>[], isWanted: boolean): readonly Answered<J>[] {
  const who = useRef({});
  useEffect(
    () => work.want(who.current, isWanted ? (wishes as readonly Wish<JobName>[]) : NO_WISHES),
    [wishes, isWanted],
  );
  useEffect(() => {
    const me = who.current;
    return () => work.want(me, []);
  }, []);
  const last = useRef<readonly Answered<J>[]>([]);
  return useSyncExternalStore(work.subscribe, () => {
    const now = wishes.map((wish) => work.of(wish));
    const isSame = now.length === last.current.length && now.every((one, i) => one === last.current[i]);
    if (!isSame) last.current = now;
    return last.current;
  });
}

const NO_TRUCKS: readonly Truck[] = [];

/** The same for one truck; null without one. */
export function useAnswer<J extends JobName>(
  job: J,
  truck: Truck | null,
  asked?: Asked<J>,
): Answered<J> | null {
  const trucks = useMemo(() => (truck === null ? NO_TRUCKS : [truck]), [truck]);
  return useAnswers(job, trucks, asked)[0] ?? null;
}

/** What is known of a job's answer that others ask for: told as it comes, and not asked for. */
export function useKnown<J extends JobName>(job: J, truck: Truck): Answered<J> {
  const wish = useMemo((): Wish<J> => ({ job, truck, question: null, given: null }) as Wish<J>, [job, truck]);
  return useSyncExternalStore(work.subscribe, () => work.of(wish));
}

/** The last answer there was, of whatever truck and question: what is looked at does not blink while it is worked out anew. */
export function useLastAnswer<J extends JobName>(answered: Answered<J> | null): Answer<J> | null {
  return useLastAnswered(answered)?.answer ?? null;
}

/** The same with the truck and the question that it answers. */
export function useLastAnswered<J extends JobName>(answered: Answered<J> | null): Answered<J> | null {
  const last = useRef<Answered<J> | null>(null);
  if (answered?.answer != null) last.current = answered;
  return last.current;
}
