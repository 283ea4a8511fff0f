import type { CDPSession } from "playwright-core";

/** Processor seconds of a page's main thread since it began: all its tasks, of them scripts, of them style and layout. */
export interface Worked {
  readonly taskSeconds: number;
  readonly scriptSeconds: number;
  readonly layoutSeconds: number;
}

/** ms a drag that a main thread worked from one look to another, drawing in software included. */
export function perDrag(from: Worked, to: Worked, drags: number): Readonly<Record<keyof Worked, number>> {
  const of = (what: keyof Worked) => (1000 * (to[what] - from[what])) / drags;
  return {
    taskSeconds: of("taskSeconds"),
    scriptSeconds: of("scriptSeconds"),
    layoutSeconds: of("layoutSeconds"),
  };
}

/** Reads the numbers a browser counts of a page by itself. @throws Error when it does not tell one that is asked for */
export async function metricsOf(session: CDPSession): Promise<(name: string) => number> {
  const { metrics } = await session.send("Performance.getMetrics");
  return (name) => {
    const found = metrics.find((m) => m.name === name);
    if (found === undefined) throw new Error(`metricsOf: the browser does not tell ${name}`);
    return found.value;
  };
}

/** `Performance` must count by processor time: `startCounting`. */
export function workedOf(metric: (name: string) => number): Worked {
  return {
    taskSeconds: metric("TaskDuration"),
    scriptSeconds: metric("ScriptDuration"),
    layoutSeconds: metric("LayoutDuration") + metric("RecalcStyleDuration"),
  };
}

/** Counts processor time, not time by the clock, from now on. */
export async function startCounting(session: CDPSession): Promise<void> {
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
}
