/**
 * `npm run mutate [-- SECONDS [SEED [PATH]]]`: changes the sources of the solver in small ways, one at a time, and tells
 * which changes no test of it notices. A seeded sample, as many as the time allows; every change is drawn with the same
 * chance. With a path only sources whose path begins with it are changed. Exits 1 where the score is below what is wanted.
 */

import { readdirSync, readFileSync, rmSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { seeded } from "../fuzz/seeded.ts";
import { mutatedCopy } from "./copy.ts";
import { JudgeProcess } from "./judgeProcess.ts";
import { type Mutant, mutantsOf } from "./operators.ts";
import { alikeReason } from "./survivors.ts";
import type { Numbered } from "./switched.ts";

const ROOT = join(import.meta.dirname, "..", "..");
const SOURCES = ["src/suspension", "src/gaps", "src/studies/search"];
/** Those that look at the solver itself; what rests on it says less of what is wrong. */
const TESTS = ["tests/geometry", "tests/suspension", "tests/gaps", "tests/studies"];
const BESIDE = /^tests\/studies\/(?!search|hardware|limits|[^/]*$)/;

/** Percent of the mutants judged that some test must notice. */
const WANTED = 85;
/** Mutants drawn for each second: more than can be judged. */
const DRAWN = 4;
/** ms of processor time: of a test file that takes more only the first tests are asked; what all tests of a mutant may take. */
const LONGEST_FILE = 6000;
const LONGEST_MUTANT = 30_000;

interface TestFile {
  readonly file: string;
  readonly took: number;
  /** How many of its tests are asked. */
  readonly asked: number;
  readonly seen: ReadonlySet<number>;
}

/** What became of a mutant; given up = the tests that come by it would take too long. */
type Fate = "noticed" | "no test notices it" | "no test comes by it" | "given up";

interface Verdict {
  readonly mutant: Mutant;
  readonly fate: Fate;
}

const [seconds = 600, seed = 1] = process.argv.slice(2, 4).map(Number);
const path = process.argv[4] ?? "";
const end = performance.now() + 1000 * seconds;
const all = SOURCES.flatMap((folder) => filesIn(folder, ".ts"))
  .filter((file) => file.startsWith(path))
  .flatMap((file) => mutantsOf(file, readFileSync(join(ROOT, file), "utf8")));
const drawn: Numbered[] = shuffled(all)
  .slice(0, DRAWN * seconds)
  .map((mutant, number) => ({ number, mutant }));
const copy = mutatedCopy(ROOT, drawn);
const judges = Array.from(
  { length: availableParallelism() },
  () => new JudgeProcess(copy, join(ROOT, "node_modules", "vitest", "package.json"), drawn.length),
);
try {
  const tests = await sound(
    TESTS.flatMap((folder) => filesIn(folder, ".test.ts")).filter((file) => !BESIDE.test(file)),
  );
  console.log(`${tests.length} test files, ${all.length} mutants of ${SOURCES.join(", ")}`);
  const judged: Verdict[] = [];
  const queue = [...drawn];
  await Promise.all(
    judges.map(async (judge) => {
      for (let next = queue.shift(); next && performance.now() < end; next = queue.shift())
        judged.push(told({ mutant: next.mutant, fate: await fateOf(judge, next, tests) }));
    }),
  );
  process.exitCode = tell(judged) ? 0 : 1;
} finally {
  for (const judge of judges) judge.end();
  rmSync(copy, { recursive: true, force: true });
}

function filesIn(folder: string, ending: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(ending))
    .map((file) => `${folder}/${file}`);
}

function shuffled(mutants: readonly Mutant[]): Mutant[] {
  const random = seeded(seed);
  const left = [...mutants];
  for (let i = left.length - 1; i > 0; i--) {
    const other = random.below(i + 1);
    [left[i], left[other]] = [left[other]!, left[i]!];
  }
  return left;
}

/** The test files whose first tests pass with no mutant on, the quickest first, with the mutants they come by. */
async function sound(files: readonly string[]): Promise<TestFile[]> {
  const found: TestFile[] = [];
  const queue = [...files];
  await Promise.all(
    judges.map(async (judge) => {
      for (let file = queue.shift(); file; file = queue.shift()) {
        judge.end();
        const most = { tests: Number.MAX_SAFE_INTEGER, ms: LONGEST_FILE };
        const judged = await judge.run({ file, mutant: -1, most }, 2 * LONGEST_FILE);
        if (judged === null) console.log(`not asked, its first tests take too long: ${file}`);
        else if (judged.fault !== null)
          console.log(`not asked, it fails here by itself: ${file}: ${judged.fault}`);
        else found.push({ file, took: judged.took, asked: judged.tests, seen: new Set(judged.seen) });
      }
    }),
  );
  return found.sort((a, b) => a.took - b.took);
}

async function fateOf(
  judge: JudgeProcess,
  { number, mutant }: Numbered,
  tests: readonly TestFile[],
): Promise<Fate> {
  let left = LONGEST_MUTANT;
  // Those of its own room come first: they are the likeliest to notice.
  const own = mutant.file.replace("src/", "tests/").replace(/[^/]*$/, "");
  const isOwn = ({ file }: TestFile) => (file.startsWith(own) ? 0 : 1);
  const asked = tests.filter(({ seen }) => seen.has(number)).sort((a, b) => isOwn(a) - isOwn(b));
  if (asked.length === 0) return "no test comes by it";
  for (const { file, took, asked: tests } of asked) {
    left -= took;
    if (left < 0) return "given up";
    const most = { tests, ms: Number.MAX_SAFE_INTEGER };
    const judged = await judge.run({ file, mutant: number, most }, 5000 + 10 * took);
    if (judged === null || judged.fault !== null) return "noticed";
  }
  return "no test notices it";
}

/** Prints a survivor. @returns what was told */
function told(verdict: Verdict): Verdict {
  const { mutant, fate } = verdict;
  if (fate === "noticed") return verdict;
  console.log(`${mutant.file}:${mutant.line}  ${squeezed(mutant.from)}  →  ${squeezed(mutant.to)}`);
  console.log(`    ${alikeReason(mutant) ?? fate.toUpperCase()}`);
  return verdict;
}

/** @returns whether the score is as wanted */
function tell(judged: readonly Verdict[]): boolean {
  const survivors = judged.filter(({ fate }) => fate !== "noticed");
  const alike = survivors.filter(({ mutant }) => alikeReason(mutant) !== null);
  const noticed = judged.length - survivors.length;
  const score = (100 * noticed) / (judged.length - alike.length);
  console.log(
    `${judged.length} of ${all.length} mutants judged (seed ${seed}): ${noticed} noticed, ${survivors.length} not, ${alike.length} of which change no answer`,
  );
  console.log(
    `score ${score.toFixed(1)} %, wanted ${WANTED} % (with those that change no answer ${((100 * noticed) / judged.length).toFixed(1)} %)`,
  );
  return score >= WANTED;
}

function squeezed(text: string): string {
  return text.replace(/\s+/g, " ");
}
