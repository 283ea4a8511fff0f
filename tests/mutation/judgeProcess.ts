import { type ChildProcess, fork } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Asked, Judged } from "./judge.ts";

/**
 * A process that runs test files of a copy with one mutant on, begun anew for another mutant: what modules and test files
 * keep of what they worked out before would hide it.
 */
export class JudgeProcess {
  private process: ChildProcess | null = null;
  private active = -1;

  constructor(
    private readonly copy: string,
    private readonly vitest: string,
    private readonly count: number,
  ) {}

  /**
   * @param limit ms of processor time after which it is taken for endless
   * @returns null = endless
   */
  async run(asked: Asked, limit: number): Promise<Judged | null> {
    if (asked.mutant !== this.active) this.end();
    this.active = asked.mutant;
    this.process ??= await this.start(asked.mutant);
    const running = this.process;
    const judged = await new Promise<Judged | null>((done) => {
      const end = spentBy(running) + limit;
      const timer = setInterval(() => {
        if (spentBy(running) < end) return;
        clearInterval(timer);
        done(null);
      }, 500);
      const told = (answer: Judged) => {
        clearInterval(timer);
        running.off("exit", ended);
        done(answer);
      };
      const ended = () => {
        clearInterval(timer);
        running.off("message", told);
        done({ fault: "the process ended", tests: 0, took: 0, seen: [] });
      };
      running.once("message", told);
      running.once("exit", ended);
      running.send(asked);
    });
    if (judged === null || running.exitCode !== null) this.end();
    return judged;
  }

  end(): void {
    this.process?.removeAllListeners();
    this.process?.kill("SIGKILL");
    this.process = null;
  }

  private start(active: number): Promise<ChildProcess> {
    const child = fork(join(this.copy, "tests", "mutation", "judge.ts"), {
      cwd: this.copy,
      execArgv: ["--import", "tsx"],
      env: {
        ...process.env,
        MUTATION_VITEST: this.vitest,
        MUTATION_COUNT: String(this.count),
        MUTATION_ACTIVE: String(active),
      },
      stdio: ["ignore", "ignore", "inherit", "ipc"],
    });
    return new Promise((ready, failed) => {
      child.once("message", () => ready(child));
      child.once("exit", () => failed(new Error("tests/mutation/judge.ts ended before it began")));
    });
  }
}

/** Clock ticks of Linux, ms. */
const TICK = 10;

/** Processor time of a process, ms; where the system does not tell it (`/proc`), the wall clock, which a busy machine makes long. */
function spentBy({ pid }: ChildProcess): number {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ")[1]!.split(" ");
    return TICK * (Number(fields[11]) + Number(fields[12]));
  } catch {
    return performance.now();
  }
}
