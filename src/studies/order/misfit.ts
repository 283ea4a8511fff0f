import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import type { BoltPattern } from "../../units/boltPattern.ts";
import type { ThreadCallout } from "../../units/threadCallout.ts";

/** What of an order does not go together, before it is words; mm and radians. `at` is the key that is to be mended. */
export type Misfit = { readonly at: KeyPath } & (
  | { readonly kind: "unknown item"; readonly item: string; readonly names: readonly string[] }
  | { readonly kind: "unknown stance"; readonly stance: string; readonly names: readonly string[] }
  | { readonly kind: "tapers differ"; readonly seat: number; readonly stud: number }
  | {
      readonly kind: "too little engaged";
      readonly engaged: number;
      readonly least: number;
      readonly thread: ThreadCallout;
    }
  | { readonly kind: "shank too short"; readonly shank: number; readonly least: number }
  | { readonly kind: "threads differ"; readonly thread: ThreadCallout; readonly other: ThreadCallout }
  | {
      readonly kind: "patterns differ";
      readonly pattern: BoltPattern;
      readonly other: BoltPattern;
      readonly what: "wheel" | "rotor";
    }
  | {
      readonly kind: "bore too small";
      readonly bore: number;
      readonly over: number;
      readonly what: "wheel" | "rotor";
    }
  | {
      readonly kind: "no step down";
      readonly diameter: number;
      readonly inboard: number;
      readonly what: "outer bearing" | "nut thread" | "inner bearing";
    }
  /** Of the build's pin beside what the hub asks of it; null = the pin ends before. */
  | {
      readonly kind: "seat on the pin";
      readonly what: "inner bearing" | "outer bearing";
      readonly from: number;
      readonly to: number;
      readonly bore: number;
      readonly diameter: number | null;
    }
  | {
      readonly kind: "bearing off its seat";
      readonly what: "inner bearing" | "outer bearing";
      readonly center: number;
      readonly from: number;
      readonly to: number;
    }
  | { readonly kind: "pin end"; readonly end: number; readonly wanted: number }
  | { readonly kind: "bearings overlap"; readonly seat: number; readonly least: number }
  | { readonly kind: "no room on the pin"; readonly shoulder: number; readonly hubFace: number }
  | {
      readonly kind: "caliper in the wheel";
      readonly what: "barrel" | "wheel center";
      readonly depth: number;
      readonly reach: number;
      readonly barrelDiameter: number;
    }
  | { readonly kind: "rotor in the barrel"; readonly diameter: number; readonly barrelDiameter: number }
  | { readonly kind: "rim too small"; readonly rim: number; readonly least: number }
  | { readonly kind: "does not assemble"; readonly issue: SetupIssue }
);
