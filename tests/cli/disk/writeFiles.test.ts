import {
  chmodSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  realpathSync,
  statSync,
  symlinkSync,
  unlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, it } from "vitest";
import { InputFiles } from "../../../src/cli/disk/readBytes.ts";
import { checkOutFiles, type OutFile, writeFiles } from "../../../src/cli/disk/writeFiles.ts";
import { setupFolder } from "../setupFolder.ts";

const OURS = "Wellsweep, mm: a surface of ours";
const STRANGE = "solid of somebody else";

let count = 0;
const all = setupFolder();
let folder = "";
const at = (name: string) => join(folder, name);
const put = (name: string, content: string) => writeFileSync(at(name), content);
const content = (name: string) => readFileSync(at(name), "utf8");

beforeEach(() => {
  folder = join(all.path, String(count++));
  mkdirSync(folder);
});

/** Writes what is given by name. @returns "" or what it was refused for */
function written(files: Readonly<Record<string, string>>, force = false, inputs = new InputFiles()): string {
  return writtenAs(
    Object.entries(files).map(([name, text]) => ({ file: at(name), bytes: Buffer.from(text) })),
    force,
    inputs,
  );
}

function writtenAs(outs: readonly OutFile[], force = false, inputs = new InputFiles()): string {
  const refuse = (file: string, mend: string) => new RangeError(`${file.slice(folder.length + 1)}: ${mend}`);
  const rules = { inputs, force };
  try {
    checkOutFiles(
      outs.map(({ file }) => file),
      rules,
      refuse,
    );
    writeFiles(outs, rules, refuse);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return error.message;
  }
  return "";
}

describe("a file is written", () => {
  it("new, over one of ours and over an empty one, and nothing else is left in its folder", () => {
    put("ours.stl", OURS);
    put("empty.stl", "");
    expect(written({ "new.stl": "one", "ours.stl": "two", "empty.stl": "three" })).toBe("");
    expect(["new.stl", "ours.stl", "empty.stl"].map(content)).toEqual(["one", "two", "three"]);
    expect(readdirSync(folder)).toHaveLength(3);
  });

  it("as a new file that gets the name: who has the old one open, or by another name, keeps it", () => {
    put("ours.stl", OURS);
    linkSync(at("ours.stl"), at("other name.stl"));
    expect(written({ "ours.stl": "new" })).toBe("");
    expect([content("ours.stl"), content("other name.stl")]).toEqual(["new", OURS]);
  });

  it("with the permissions of the one it replaces", () => {
    put("ours.stl", OURS);
    chmodSync(at("ours.stl"), 0o640);
    expect(written({ "ours.stl": "new" })).toBe("");
    expect(statSync(at("ours.stl")).mode & 0o777).toBe(0o640);
  });

  it("where a link leads, and the link stays", () => {
    mkdirSync(at("there"));
    put("there/ours.stl", OURS);
    symlinkSync("there/ours.stl", at("link.stl"));
    expect(written({ "link.stl": "new" })).toBe("");
    expect(content("there/ours.stl")).toBe("new");
    expect(realpathSync(at("link.stl"))).toBe(realpathSync(at("there/ours.stl")));
  });
});

describe("a file of another program", () => {
  it.each([[STRANGE], ["somebody's notes on Wellsweep, mm: and more"]])(
    "%j is left alone, but for --force",
    (text) => {
      put("scan.stl", text);
      expect(written({ "scan.stl": "new" })).toBe(
        "scan.stl: is there already and was not written by this program; choose another name, move it away, or replace it with --force",
      );
      expect(content("scan.stl")).toBe(text);
      expect(written({ "scan.stl": "new" }, true)).toBe("");
      expect(content("scan.stl")).toBe("new");
    },
  );

  it("that comes into the place while the work is done is left alone too", () => {
    const late: OutFile = {
      file: at("late.stl"),
      bytes: Buffer.from("new"),
    };
    const first: OutFile = {
      file: at("first.stl"),
      get bytes() {
        put("late.stl", STRANGE);
        return Buffer.from("new");
      },
    };
    expect(writtenAs([first, late])).toMatch(/^late\.stl: is there already .*; nothing was written/);
    expect([existsSync(at("first.stl")), content("late.stl")]).toEqual([false, STRANGE]);
    expect(readdirSync(folder)).toEqual(["late.stl"]);
  });
});

describe("what the run reads is never written over, not even with --force", () => {
  it.each([
    ["by its own name", (name: string) => name],
    [
      "by another way to it",
      (name: string) => {
        mkdirSync(at("sub"), { recursive: true });
        return `sub/../${name}`;
      },
    ],
    [
      "by a link",
      (name: string) => {
        symlinkSync(name, at("link.stl"));
        return "link.stl";
      },
    ],
    [
      "by a hard link",
      (name: string) => {
        linkSync(at(name), at("hard.stl"));
        return "hard.stl";
      },
    ],
    [
      "by a folder that is a link",
      (name: string) => {
        symlinkSync(".", at("here"));
        return `here/${name}`;
      },
    ],
  ])("%s", (_, asNamed) => {
    put("fender.stl", OURS);
    const inputs = new InputFiles();
    inputs.read(at("fender.stl"), 1000, "fender.stl");
    const name = asNamed("fender.stl");
    for (const force of [false, true]) {
      expect(written({ [name]: "new" }, force, inputs)).toMatch(
        /: is the same file as "fender\.stl", which is read here; choose another name$/,
      );
    }
    expect(content("fender.stl")).toBe(OURS);
  });
});

describe("of several files", () => {
  it("none is written where one cannot be, and the old ones stay", () => {
    put("a.stl", OURS);
    mkdirSync(at("b.stl"));
    expect(written({ "a.stl": "new", "b.stl": "new" })).toBe("b.stl: is a folder; name a file inside it");
    expect([content("a.stl"), readdirSync(folder).length]).toEqual([OURS, 2]);
  });

  it("two names for one file are refused", () => {
    put("a.stl", OURS);
    symlinkSync("a.stl", at("link.stl"));
    expect(written({ "a.stl": "new", "link.stl": "new" })).toBe(
      "link.stl: is named twice; name each file once",
    );
  });

  it.each([
    ["first", "a.stl", "nothing was written, and what was there stays as it was"],
    ["second", "b.stl", 'written: "a.stl"; not written: "b.stl", "c.stl"'],
  ])(
    "where the %s renaming fails, says which are written and which are not, and leaves no parts",
    (_, name, told) => {
      put("a.stl", OURS);
      const outs: readonly OutFile[] = ["a.stl", "b.stl", "c.stl"].map((file) => ({
        file: at(file),
        get bytes() {
          // The last is asked for its bytes once the others lie beside their places: looked at for the last time.
          if (file === "c.stl") {
            if (existsSync(at(name))) unlinkSync(at(name));
            mkdirSync(at(`${name}/full`), { recursive: true });
          }
          return Buffer.from("new");
        },
      }));
      const said = writtenAs(outs).replaceAll(`${folder}/`, "");
      expect(said).toBe(`${name}: is a folder; name a file inside it; ${told}`);
      // The folder in the way, and what came before it: no part lies beside.
      expect(readdirSync(folder).sort()).toEqual(name === "a.stl" ? ["a.stl"] : ["a.stl", "b.stl"]);
      if (name === "b.stl") expect(content("a.stl")).toBe("new");
    },
  );
});

describe("a name that cannot be written to is refused with the reason", () => {
  it.each([
    ["no/such/folder.stl", /there is no such folder; make it first$/],
    [`${"x".repeat(300)}.stl`, /the name is too long for a file; shorten it$/],
    ["dangling.stl", /is a link to a file that is not there; name that file itself$/],
    ["loop.stl", /is a link that leads to itself; name the file it should lead to$/],
    ["zero\0byte.stl", /cannot be written \(ERR_INVALID_ARG_VALUE\); write elsewhere$/],
  ])("%s", (name, mend) => {
    symlinkSync("nowhere.stl", at("dangling.stl"));
    symlinkSync("loop.stl", at("loop.stl"));
    expect(written({ [name]: "new" })).toMatch(mend);
    expect(written({ [name]: "new" }, true)).toMatch(mend);
    expect(readdirSync(folder).sort()).toEqual(["dangling.stl", "loop.stl"]);
  });

  it("a device", () => {
    symlinkSync("/dev/null", at("null.stl"));
    expect(written({ "null.stl": "new" }, true)).toBe(
      "null.stl: is a pipe or a device, not a file; choose another name",
    );
  });
});
