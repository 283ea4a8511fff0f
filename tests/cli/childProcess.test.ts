import { spawnSync } from "node:child_process";
import { closeSync, openSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it } from "vitest";
import { run } from "../../src/cli/run.ts";
import { runs } from "../runs.ts";
import { demoDocument, lipAlone } from "../studies/demoModel.ts";
import { builtCli } from "./builtCli.ts";
import { captured } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

const folder = setupFolder();
const lip = folder.write("lip.json", demoDocument(lipAlone()));
const bare = folder.write("bare.json", demoDocument({ truck: { body: null } }));
const main = join(await builtCli(), "cli", "main.js");

/** Seconds that a slow reader or writer takes: longer than the program takes to start, on a busy machine too in the long run. */
const SLOW = runs(1, 3);

/** Bytes. */
const MOST_OUT = 64 * 1024 * 1024;

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly error: string;
}

/** The built command line as a process of its own. @param out where its standard output goes: a pipe, or an open file */
function spawned(args: readonly string[], out: "pipe" | number = "pipe", input = ""): Ended {
  const child = spawnSync(process.execPath, [main, ...args], {
    encoding: "utf8",
    maxBuffer: MOST_OUT,
    input,
    stdio: ["pipe", out, "pipe"],
  });
  return { code: child.status, out: child.stdout ?? "", error: child.stderr };
}

/** The same by the sources as they are. */
function fromCheckout(args: readonly string[]): Ended {
  const child = spawnSync(process.execPath, ["--import", "tsx", "src/cli/main.ts", ...args], {
    encoding: "utf8",
  });
  return { code: child.status, out: child.stdout, error: child.stderr };
}

/** A line of bash, in which "$N" "$M" starts the command line, with FILE in "$1". */
function inShell(line: string, file = bare): Ended {
  const child = spawnSync("bash", ["-c", line, "bash", file], {
    encoding: "utf8",
    maxBuffer: MOST_OUT,
    env: { ...process.env, N: process.execPath, M: main },
  });
  return { code: child.status, out: child.stdout, error: child.stderr };
}

describe("the command line as a process", () => {
  it("prints and exits as it does in this process, built and from a checkout: rubs 1, bad input 2", () => {
    const all = [
      ["check", lip, "--json"],
      ["pose", lip, "--at", "-3 3/4,-0.5", "--travel", "1"],
    ];
    for (const [i, args] of all.entries()) {
      const here = captured(args);
      expect(here.code).toBe(1 + i);
      expect(spawned(args)).toEqual(here);
      // Below a checkout answers as well: of the two, on every change the refusal alone.
      if (i >= runs(1, 0)) expect(fromCheckout(args)).toEqual(here);
    }
  });

  it("says by several threads, built and from a checkout, what one thread says", () => {
    const axes = ["--x", "wheel.backspacing=4:5:1/9", "--y", "tire.sectionWidth=8:10:2/9"];
    const all = [
      ["chart", lip, ...axes, "--json", "--budget", "100"],
      ["odds", lip, "--draws", "400", "--json", "--budget", "100"],
    ];
    for (const args of all.slice(0, runs(1, 2))) {
      const here = captured(args);
      expect(here.out.length).toBeGreaterThan(1000);
      expect(spawned(args)).toEqual(here);
      expect(fromCheckout(args)).toEqual(here);
    }
  }, 120_000);

  it("does not wait for a thread that died before it had an answer: one line, exit 2", () => {
    const dies = `const { workerData } = require("node:worker_threads"); if (workerData?.share?.at === 0) process.exit(3);`;
    const env = { ...process.env, NODE_OPTIONS: `--require=${folder.write("dies.cjs", dies)}` };
    const args = [main, "odds", lip, "--draws", "400"];
    const child = spawnSync(process.execPath, args, { encoding: "utf8", env, timeout: 60_000 });
    expect([child.status, child.stdout, child.stderr]).toEqual([
      2,
      "",
      "wellsweep: a fault of the program itself, please report it: a thread ended before it had an answer\n",
    ]);
  });

  it("does not wait for threads that cannot start: one line with the mend, exit 2", () => {
    const dies = `const { workerData } = require("node:worker_threads"); if (workerData?.of !== undefined) process.exit(3);`;
    // As the command line does, with less patience.
    const script = folder.write(
      "impatient.mjs",
      `import { run } from ${JSON.stringify(pathToFileURL(join(dirname(main), "run.js")))};
import { shareOut } from ${JSON.stringify(pathToFileURL(join(dirname(main), "threads/shareOut.js")))};
const write = (stream) => (text) => void stream.write(text);
process.exitCode = run(process.argv.slice(2), {
  writeOut: write(process.stdout),
  writeError: write(process.stderr),
  shareOut: (job, ask, seconds, onProgress) => shareOut(job, ask, seconds, onProgress, 2, 5),
});`,
    );
    const env = { ...process.env, NODE_OPTIONS: `--require=${folder.write("keeperDies.cjs", dies)}` };
    const args = [script, "odds", lip, "--draws", "400"];
    const child = spawnSync(process.execPath, args, { encoding: "utf8", env, timeout: 60_000 });
    expect([child.status, child.stdout, child.stderr]).toEqual([
      2,
      "",
      expect.stringMatching(/^wellsweep: the threads that share this job could not be started .*ulimit.*\n$/),
    ]);
  });

  it("reads standard input and prints all of a long answer into a pipe, exit 0", () => {
    const document = JSON.stringify(demoDocument({ truck: { body: null } }));
    const { code, out, error } = spawned(["sweep", "-", "--steps", "600", "--json"], "pipe", document);
    expect([code, error]).toEqual([0, ""]);
    expect(out.length).toBeGreaterThan(500_000);
    expect(JSON.parse(out).bySteer).toHaveLength(600);
  });

  it("is quiet when its reader hangs up, with the exit code of its answer", () => {
    for (const [line, file, code] of [
      ['"$N" "$M" sweep "$1" --steps 600 --json | head -n 1; echo $PIPESTATUS', bare, 0],
      ['"$N" "$M" check "$1" --json | head -n 0; echo $PIPESTATUS', lip, 1],
    ] as const) {
      const { out, error } = inShell(line, file);
      expect([error, out.split("\n").at(-2)]).toEqual(["", String(code)]);
    }
  });
});

describe("what is written", () => {
  it("all goes into a pipe that says it is not ready, read slowly", () => {
    // As for reading, below.
    const notWaiting = `new net.Socket({ fd: 1 }).pause(); process.kill(process.pid, "SIGKILL")`;
    const line = `({ "$N" -e '${notWaiting}'; } 2>/dev/null; "$N" "$M" sweep "$1" --steps 600 --json; echo "$?" >&2) | (sleep ${SLOW}; cat)`;
    const { out, error } = inShell(line);
    expect(error).toBe("0\n");
    expect(JSON.parse(out).bySteer).toHaveLength(600);
  });

  it("is never written over the file that standard input comes from", () => {
    const line =
      'cp "$1" "$1.stl"; "$N" "$M" envelope - --travel 0 --straight --out "$1.stl" --force <"$1.stl"';
    const { code, out, error } = inShell(line);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toMatch(
      /^standard input: --out: ".*\.stl": is the same file as "standard input", which is read here; choose another name\n$/,
    );
    expect(readFileSync(`${bare}.stl`, "utf8")).toBe(readFileSync(bare, "utf8"));
  });
});

describe("what cannot be written is no answer: exit 2", () => {
  const answers = [["--help"], ["check", lip, "--json"], ["sweep", bare, "--csv"], ["--version"]];
  it.each(answers.slice(0, runs(2, answers.length)).map((args) => [args]))(
    "%j onto a full disk, with one line that says so",
    (args) => {
      const full = openSync("/dev/full", "w");
      try {
        const { code, error } = spawned(args, full);
        expect([code, error]).toEqual([2, "wellsweep: standard output: the disk is full; make room\n"]);
      } finally {
        closeSync(full);
      }
    },
  );

  it("with standard error closed or full as well", () => {
    const lines = [
      ['"$N" "$M" pose "$1" >/dev/full 2>/dev/full', 2],
      ['"$N" "$M" pose "$1" 2>&-', 0],
      ['"$N" "$M" pose no-such-file.json 2>&-', 2],
      ['"$N" "$M" pose no-such-file.json 2>/dev/full', 2],
    ] as const;
    for (const [line, code] of lines.slice(0, runs(2, lines.length))) {
      expect([line, inShell(line)]).toMatchObject([line, { code, error: "" }]);
    }
  });

  it("and of a document that does not fit into its file nothing stays there", () => {
    const file = folder.write("answers.json", "before\n");
    const { code, error } = inShell(`ulimit -f 1; "$N" "$M" pose "$1" --json >> '${file}'`);
    expect(code).toBe(2);
    expect(error).toBe(
      "wellsweep: standard output: is larger than a file may be here; raise that limit (ulimit -f) or write elsewhere\n",
    );
    expect(readFileSync(file, "utf8")).toBe("before\n");
  });
});

describe("a fault of the program itself", () => {
  it("is named as one on one line, exit 2, without a trace", () => {
    let error = "";
    const code = run(["pose", bare], {
      writeOut: () => {
        throw new TypeError("two\nlines");
      },
      writeError: (text) => {
        error += text;
      },
      readInput: () => ({ bytes: new Uint8Array(), identity: null }),
    });
    expect([code, error]).toEqual([
      2,
      "wellsweep: a fault of the program itself, please report it: two lines\n",
    ]);
  });
});

describe("what is read", () => {
  it("may come slowly, and from a pipe that says it is not ready", () => {
    // A socket of Node's makes the pipe it is opened on one whose reading does not wait; only an end without notice leaves it so.
    const notWaiting = `new net.Socket({ fd: 0 }).pause(); process.kill(process.pid, "SIGKILL")`;
    const line = `(sleep ${SLOW}; head -c 2000 "$1"; sleep 1; tail -c +2001 "$1") | ({ "$N" -e '${notWaiting}'; } 2>/dev/null; "$N" "$M" pose - --json)`;
    const { code, out, error } = inShell(line);
    expect([code, error]).toEqual([0, ""]);
    expect(JSON.parse(out)).toEqual(JSON.parse(captured(["pose", bare, "--json"]).out));
  });

  const unread: readonly (readonly [string, string, RegExp])[] = [
    [
      "without an end on standard input",
      '"$N" "$M" pose - </dev/zero',
      /^standard input: has more than 192 MB, the most a setup may have; name a setup file\n$/,
    ],
    [
      "nothing on standard input",
      '"$N" "$M" pose - <&-',
      /^standard input: line 1, column 1: the file is empty; /,
    ],
    ["a pipe of the shell's", '"$N" "$M" pose <(cat "$1")', /: is a pipe or a device, not a file; /],
    ["a folder on standard input", '"$N" "$M" pose - </', /^standard input: is a folder; /],
    ["a device", '"$N" "$M" pose /dev/zero', /^\/dev\/zero: is a pipe or a device, not a file; /],
    [
      "a pipe nobody writes to",
      'mkfifo "$1.p"; "$N" "$M" pose "$1.p"',
      /p: is a pipe or a device, not a file; /,
    ],
  ];
  it.each(unread.slice(0, runs(4, unread.length)))(
    "is no answer, exit 2, where it is %s",
    (_, line, mend) => {
      const { code, out, error } = inShell(line);
      expect([code, out]).toEqual([2, ""]);
      expect(error).toMatch(mend);
      expect(error).toMatch(/^[^\n]+\n$/);
    },
  );
});
