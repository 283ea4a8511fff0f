import { createRequire } from "node:module";

/**
 * What the test files of the core use of Vitest, run in this process at once and ended at the first failure: a mutant is
 * judged in milliseconds. `main.ts` puts it in Vitest's place in a copy of the repository.
 */

type Job = () => unknown;

interface Group {
  readonly jobs: Job[];
  readonly before: Job[];
  readonly after: Job[];
  readonly beforeEach: Job[];
  readonly afterEach: Job[];
}

const emptyGroup = (): Group => ({ jobs: [], before: [], after: [], beforeEach: [], afterEach: [] });

let group = emptyGroup();
const whenFinished: Job[] = [];

// Of Vitest's own folder, since they are its own libraries.
const require = createRequire(process.env.MUTATION_VITEST ?? import.meta.url);
const chai = await import(require.resolve("chai"));
const library = await import(require.resolve("@vitest/expect"));
for (const plugin of ["JestExtend", "JestChaiExpect", "JestAsymmetricMatchers"]) chai.use(library[plugin]);

export const expect = Object.assign(
  (value: unknown, message?: string) => chai.expect(value, message),
  chai.expect,
  (globalThis as Record<symbol, object>)[library.ASYMMETRIC_MATCHERS_OBJECT],
);

/** Types are for the compiler. */
export const expectTypeOf = () => new Proxy(() => {}, { get: () => () => {} });

export const inject = () => false;

export interface Most {
  readonly tests: number;
  /** Of processor time. */
  readonly ms: number;
}

/** Tests run of the file asked for, and the processor time after which no other is begun, µs since the process began. */
let ran = 0;
let last = 0;
let most = 0;

function spent(): number {
  const { user, system } = process.cpuUsage();
  return user + system;
}

/** @returns what went wrong first, null = all passed; and how many tests were run */
export async function runFile(
  path: string,
  { tests, ms }: Most,
): Promise<{ fault: string | null; tests: number }> {
  group = emptyGroup();
  const root = group;
  ran = 0;
  most = tests;
  last = spent() + 1000 * ms;
  try {
    await import(path);
    await runGroup(root, [], []);
    return { fault: null, tests: ran };
  } catch (error) {
    return { fault: String((error as Error)?.message ?? error).slice(0, 300), tests: ran };
  }
}

async function runGroup(own: Group, before: readonly Job[], after: readonly Job[]): Promise<void> {
  for (const job of own.before) await job();
  try {
    for (const job of own.jobs) {
      if (ran >= most || spent() > last) return;
      const test = (job as { isGroup?: boolean }).isGroup !== true;
      if (!test) {
        await (job as (b: readonly Job[], a: readonly Job[]) => Promise<void>)(
          [...before, ...own.beforeEach],
          [...own.afterEach, ...after],
        );
        continue;
      }
      ran++;
      for (const each of [...before, ...own.beforeEach]) await each();
      try {
        await job();
      } finally {
        for (const each of [...own.afterEach, ...after, ...whenFinished.splice(0)]) await each();
      }
    }
  } finally {
    for (const job of own.after) await job();
  }
}

const it = Object.assign((_name: string, job: Job) => void group.jobs.push(job), {
  each: (cases: readonly unknown[]) => (_name: string, job: (...args: unknown[]) => unknown) => {
    for (const each of cases) group.jobs.push(() => (Array.isArray(each) ? job(...each) : job(each)));
  },
});

const describe = Object.assign((_name: string, fill: Job) => addGroup(fill), {
  each: (cases: readonly unknown[]) => (_name: string, fill: (...args: unknown[]) => unknown) => {
    for (const each of cases) addGroup(() => (Array.isArray(each) ? fill(...each) : fill(each)));
  },
});

function addGroup(fill: Job): void {
  const outer = group;
  const own = emptyGroup();
  group = own;
  try {
    fill();
  } finally {
    group = outer;
  }
  const run = (before: readonly Job[], after: readonly Job[]) => runGroup(own, before, after);
  outer.jobs.push(Object.assign(run as unknown as Job, { isGroup: true }));
}

export { describe, it, it as test };
export const beforeAll = (job: Job) => void group.before.push(job);
export const afterAll = (job: Job) => void group.after.push(job);
export const beforeEach = (job: Job) => void group.beforeEach.push(job);
export const afterEach = (job: Job) => void group.afterEach.push(job);
export const onTestFinished = (job: Job) => void whenFinished.push(job);
