import { readdirSync, readFileSync } from "node:fs";
import { isBuiltin } from "node:module";
import { join, posix } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";

/** What the files of a room may import: rooms of this house (their own is always allowed), and packages. */
interface Room {
  readonly rooms: readonly string[];
  /** Package names; "node" stands for Node's own modules, "*" for every package but not Node. */
  readonly packages: readonly string[];
}

const CORE = ["studies", "gaps", "suspension", "geometry", "units", "setup"];

/** An arrow may only point down. This table is kept apart from the one in .dependency-cruiser.cjs on purpose. */
const HOUSE: Readonly<Record<string, Room>> = {
  units: { rooms: [], packages: [] },
  geometry: { rooms: [], packages: [] },
  setup: { rooms: ["units"], packages: ["zod"] },
  suspension: { rooms: ["geometry", "units"], packages: [] },
  gaps: { rooms: ["geometry", "units"], packages: ["earcut"] },
  studies: { rooms: ["gaps", "suspension", "geometry", "units", "setup"], packages: ["earcut", "ml-matrix"] },
  library: { rooms: [...CORE, "files"], packages: [] },
  files: { rooms: ["geometry", "units", "setup"], packages: ["node", "three"] },
  cli: { rooms: [...CORE, "files"], packages: ["node", "commander"] },
  serve: { rooms: [...CORE, "files"], packages: ["node", "vite"] },
  app: { rooms: [...CORE, "files"], packages: ["*"] },
};

/** Only views and the edge may read data that lies outside src; the core is handed its data. */
const MAY_LEAVE_SRC = ["app", "cli", "serve"];

interface SourceFile {
  /** Below src, with slashes: `gaps/ringToBox.ts`. */
  readonly path: string;
  readonly text: string;
}

/** Every arrow that may not be, as `from → to: why`. */
function forbiddenArrows(files: readonly SourceFile[]): string[] {
  return files.flatMap(({ path, text }) => {
    const from = roomOf(path);
    const room = HOUSE[from];
    if (!room) return [`${path}: no such room as "${from}"; give it a place in the house first`];
    return importsOf(text).flatMap((specifier) => {
      const why = whyForbidden(path, from, room, specifier);
      return why === undefined ? [] : [`${path} → ${specifier}: ${why}`];
    });
  });
}

function whyForbidden(path: string, from: string, room: Room, specifier: string): string | undefined {
  if (!specifier.startsWith(".") && !specifier.startsWith("/")) {
    if (isBuiltin(specifier))
      return room.packages.includes("node") ? undefined : `${from} does not know Node`;
    const name = packageOf(specifier);
    const allowed = room.packages.includes(name) || room.packages.includes("*");
    return allowed ? undefined : `${from} does not use the package ${name}`;
  }
  const target = posix.join(posix.dirname(path), specifier);
  if (target.startsWith("../")) return MAY_LEAVE_SRC.includes(from) ? undefined : `${from} stays inside src`;
  const to = roomOf(target);
  return to === from || room.rooms.includes(to) ? undefined : `${from} does not know ${to}`;
}

/** All that a file names as another module: imports of values and types, re-exports, `import()`, workers. */
function importsOf(text: string): string[] {
  const read = ts.preProcessFile(text, true, true);
  const workers = [...text.matchAll(/new URL\(\s*["'`]([^"'`]+)["'`]\s*,\s*import\.meta\.url/g)];
  return [
    ...read.importedFiles.map((file) => file.fileName),
    ...read.typeReferenceDirectives.map((file) => file.fileName),
    ...workers.map((match) => match[1] ?? ""),
  ];
}

function roomOf(path: string): string {
  return path.split("/")[0] ?? path;
}

function packageOf(specifier: string): string {
  return specifier
    .split("/")
    .slice(0, specifier.startsWith("@") ? 2 : 1)
    .join("/");
}

function readSources(): SourceFile[] {
  const src = join(import.meta.dirname, "..", "src");
  return readdirSync(src, { recursive: true, encoding: "utf8" })
    .filter((path) => /\.[cm]?[jt]sx?$/.test(path))
    .map((path) => ({ path: path.replaceAll("\\", "/"), text: readFileSync(join(src, path), "utf8") }));
}

describe("the layers of src", () => {
  const sources = readSources();

  it("every room has files, so that the rule below has something to judge", () => {
    const rooms = new Set(sources.map(({ path }) => roomOf(path)));
    for (const room of [...CORE, "files", "cli", "app", "serve", "library"]) expect(rooms).toContain(room);
    expect(sources.flatMap(({ text }) => importsOf(text)).length).toBeGreaterThan(0);
  });

  it("no arrow points up", () => {
    expect(forbiddenArrows(sources)).toEqual([]);
  });
});

describe("the judge of the layers", () => {
  const judge = (path: string, text: string): string[] => forbiddenArrows([{ path, text }]);

  it.each([
    ["a value import", 'import { sweep } from "../studies/sweep.ts";'],
    ["a type import", 'import type { Sweep } from "../studies/sweep.ts";'],
    ["a type among values", 'import { type Sweep } from "../studies/sweep.ts";'],
    ["a type in place", 'export type S = import("../studies/sweep.ts").Sweep;'],
    ["a re-export", 'export * from "../studies/sweep.ts";'],
    ["a re-exported type", 'export type { Sweep } from "../studies/sweep.ts";'],
    ["an import for its effects", 'import "../studies/sweep.ts";'],
    ["a dynamic import", 'export const later = () => import("../studies/sweep.ts");'],
    ["a worker", 'new Worker(new URL("../studies/sweep.ts", import.meta.url));'],
    ["an import over several lines", 'import {\n  sweep,\n  // why\n} from "../studies/sweep.ts";'],
  ])("sees %s", (_, text) => {
    expect(judge("gaps/ringToBox.ts", text)).toEqual([
      "gaps/ringToBox.ts → ../studies/sweep.ts: gaps does not know studies",
    ]);
  });

  it.each([
    ["geometry/vec.ts", "../units/lengths.ts"],
    ["units/lengths.ts", "../geometry/vec.ts"],
    ["setup/types.ts", "../geometry/vec.ts"],
    ["suspension/solvePose.ts", "../setup/types.ts"],
    ["suspension/solvePose.ts", "../gaps/ringToBox.ts"],
    ["gaps/ringToBox.ts", "../suspension/solvePose.ts"],
    ["studies/worstGap.ts", "../files/readMesh.ts"],
    ["studies/deep/worstGap.ts", "../../app/store.ts"],
    ["files/readMesh.ts", "../studies/worstGap.ts"],
    ["cli/main.ts", "../app/store.ts"],
    ["cli/main.ts", "../serve/start.ts"],
    ["serve/start.ts", "../app/main.tsx"],
    ["app/main.tsx", "../cli/main.ts"],
    ["library/index.ts", "../cli/main.ts"],
    ["studies/worstGap.ts", "../../shared/truck.json"],
    ["studies/worstGap.ts", "node:fs"],
    ["studies/worstGap.ts", "fs"],
    ["gaps/ringToBox.ts", "three"],
    ["geometry/vec.ts", "three/addons/math/OBB.js"],
    ["suspension/solvePose.ts", "@react-three/fiber"],
    ["studies/worstGap.ts", "react"],
    ["setup/types.ts", "zustand"],
    ["cli/main.ts", "react"],
    ["app/main.tsx", "node:fs"],
    ["helpers/vec.ts", "./other.ts"],
  ])("refuses %s → %s", (path, specifier) => {
    expect(judge(path, `import "${specifier}";`)).toHaveLength(1);
  });

  it.each([
    ["studies/worstGap.ts", "../gaps/ringToBox.ts"],
    ["studies/worstGap.ts", "../setup/types.ts"],
    ["studies/deep/worstGap.ts", "../shallow.ts"],
    ["gaps/ringToBox.ts", "../geometry/vec.ts"],
    ["setup/schema.ts", "zod"],
    ["cli/main.ts", "../studies/worstGap.ts"],
    ["cli/main.ts", "node:fs"],
    ["app/main.tsx", "../studies/worstGap.ts"],
    ["app/main.tsx", "@react-three/fiber"],
    ["app/main.tsx", "../../shared/truck.json"],
    ["library/index.ts", "../setup/types.ts"],
  ])("allows %s → %s", (path, specifier) => {
    expect(judge(path, `import "${specifier}";`)).toEqual([]);
  });

  it("is not fooled by a comment or a text that looks like an import", () => {
    const text = '// import "../app/store.ts";\nexport const hint = \'import "../app/store.ts"\';';
    expect(judge("gaps/ringToBox.ts", text)).toEqual([]);
  });
});
