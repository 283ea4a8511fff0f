import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { INPUT_ROW, type KernelInputs } from "./poseGrid.ts";

const SOURCE = new URL("pose.cpp", import.meta.url).pathname;
const COMPILERS = ["g++", "clang++", "c++"];

/** The pose kernel written in C++ (`pose.cpp`), compiled here with the given flags. */
export interface NativePose {
  readonly flags: string;
  /** Solves every pose `rounds` times in a process of its own, after a round to warm up. */
  readonly clock: (rounds: number) => { readonly ns: number; readonly checksum: number };
}

/** What was compiled for some inputs, by which compiler. */
export interface NativePoses {
  readonly compiler: string;
  readonly builds: readonly NativePose[];
  /** Removes the programs. */
  readonly remove: () => void;
}

/**
 * Compiles `pose.cpp` into a temporary folder, once with each list of flags.
 * @returns null on a machine without a C++ compiler (CXX names one, else the usual commands are tried).
 * @throws Error when the compiler refuses the source.
 */
export function nativePoses(
  sides: readonly KernelInputs[],
  flags: readonly (readonly string[])[],
): NativePoses | null {
  const named = process.env.CXX;
  const compiler = [...(named ? [named] : []), ...COMPILERS].find(starts);
  if (compiler === undefined) return null;
  const folder = mkdtempSync(join(tmpdir(), "wellsweep-bench-"));
  const input = join(folder, "inputs");
  const poses = sides[0]!.inputs.length / INPUT_ROW;
  const numbers = [sides.length, poses, ...sides.flatMap(({ side, inputs }) => [...side, ...inputs])];
  writeFileSync(input, Buffer.from(Float64Array.from(numbers).buffer));
  const builds = flags.map((list, i): NativePose => {
    const program = join(folder, `pose${i}`);
    execFileSync(compiler, [...list, "-o", program, SOURCE], { stdio: ["ignore", "ignore", "inherit"] });
    return {
      flags: list.join(" "),
      clock(rounds) {
        const printed = execFileSync(program, [input, String(rounds)], { encoding: "utf8" });
        const [ns, checksum] = printed.split(" ").map(Number);
        return { ns: ns!, checksum: checksum! };
      },
    };
  });
  const version = execFileSync(compiler, ["--version"], { encoding: "utf8" }).split("\n")[0]!;
  return { compiler: version, builds, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

function starts(command: string): boolean {
  try {
    execFileSync(command, ["--version"], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
}
