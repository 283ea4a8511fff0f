import type { Truck } from "../state/truck.ts";
import type { WorkReply, WorkRequest } from "./answerer.ts";
import type { Answer, Given, JobName, Question } from "./jobs.ts";

/** As much of a worker as the client needs: a stand-in does in a test. */
export interface WorkerLike {
  postMessage(request: WorkRequest, handOver?: Transferable[]): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<WorkReply>) => unknown) | null;
  onerror: ((event: ErrorEvent) => unknown) | null;
}

/** How a task ended. */
export type Ended<J extends JobName> =
  | { readonly ok: true; readonly answer: Answer<J>; readonly isCut: boolean }
  | { readonly ok: false; readonly message: string };

/** One job to be done. */
export interface Task<J extends JobName> {
  readonly job: J;
  /** null = it is about no truck. */
  readonly truck: Truck | null;
  readonly question: Question<J>;
  readonly given: Given<J>;
  /** null = as long as it takes. */
  readonly seconds: number | null;
  readonly handOver?: Transferable[];
  onProgress(share: number): void;
  onEnd(ended: Ended<J>): void;
}

/**
 * Gives one worker one task at a time. Replies are numbered, so that none is taken for another task's. What does not yield
 * can be stopped all the same: the worker is ended, and the next task begins with a new one.
 */
export class WorkClient {
  readonly #start: () => WorkerLike;
  #worker: WorkerLike | null = null;
  #id = 0;
  #task: Task<JobName> | null = null;
  /** What the worker holds of what was handed over. */
  #truck: Truck | null = null;
  #given: unknown = null;

  constructor(start: () => WorkerLike) {
    this.#start = start;
  }

  get isFree(): boolean {
    return this.#task === null;
  }

  /** Starts its worker, for a task to come. */
  start(): void {
    this.#worker ??= this.#started();
  }

  run<J extends JobName>(task: Task<J>): void {
    if (this.#task !== null) throw new Error("WorkClient.run: it is at another task");
    this.#task = task as unknown as Task<JobName>;
    this.start();
    const { job, truck, question, given, seconds } = task;
    const request: WorkRequest<J> = {
      id: ++this.#id,
      job,
      question,
      seconds,
      ...(truck !== null && truck !== this.#truck ? { truck: truck.ask } : {}),
      ...(given === this.#given ? {} : { given }),
    };
    this.#truck = truck ?? this.#truck;
    this.#given = given;
    this.#worker!.postMessage(request as WorkRequest, task.handOver);
  }

  /** Ends its worker and whatever that is at; nothing is heard of it any more. */
  stop(): void {
    this.#task = null;
    this.#drop();
  }

  #started(): WorkerLike {
    const worker = this.#start();
    worker.onmessage = ({ data }) => {
      const task = this.#task;
      if (task === null || data.id !== this.#id) return;
      if (data.kind === "progress") {
        task.onProgress(data.share);
        return;
      }
      this.#task = null;
      task.onEnd(
        data.kind === "done"
          ? { ok: true, answer: data.answer, isCut: data.isCut }
          : { ok: false, message: data.message },
      );
    };
    // A worker that fails as such may hold anything or nothing: the next task begins with a new one.
    worker.onerror = ({ message }) => {
      const task = this.#task;
      this.#task = null;
      this.#drop();
      task?.onEnd({ ok: false, message: message || "its worker could not be started" });
    };
    return worker;
  }

  #drop(): void {
    const worker = this.#worker;
    this.#worker = null;
    this.#truck = null;
    this.#given = null;
    if (worker === null) return;
    worker.onmessage = null;
    worker.onerror = null;
    worker.terminate();
  }
}
