import type { KeyPath } from "../../../setup/types/keyPath.ts";

const WORDS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  units: { in: "inches", mm: "millimeters" },
  unit: { in: "inches", mm: "millimeters", cm: "centimeters", m: "meters" },
  side: { both: "both sides", left: "left side", right: "right side" },
  type: { rack: "rack", pitman: "pitman arm and idler" },
  frame: { knuckle: "knuckle's own axes", hub: "from the hub face" },
};

/** A word of the file as a form says it. */
export function choiceWords(path: KeyPath, word: string): string {
  return WORDS[String(path.at(-1))]?.[word] ?? word;
}
