import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Vec3 } from "../../geometry/vec.ts";
import { setStage, stageSettings } from "./stageSettings.ts";

/** A place pressed on a scan: a triangle of it and the shares of its corners. */
export interface ScanHit {
  readonly triangle: number;
  readonly shares: Vec3;
  /** Where it lies as the scan stands, vehicle axes, mm. */
  readonly at: Vec3;
}

/** A place with a name. Vehicle axes, mm. */
export interface TruckPlace {
  readonly name: string;
  readonly at: Vec3;
}

/** What is to be pressed on the stage now. */
export type Asked = AskedOfScan | AskedOfTruck;

interface AskedOfScan {
  readonly on: "scan";
  /** Index of the body part. */
  readonly part: number;
  readonly words: string;
  /** Points of it that are known already. */
  readonly marks: readonly TruckPlace[];
  readonly take: (hit: ScanHit) => void;
}

export interface AskedOfTruck {
  readonly on: "truck";
  readonly words: string;
  readonly places: readonly TruckPlace[];
  readonly take: (place: TruckPlace) => void;
}

/** Points picked on the stage: asked for by a form, answered by the picture. No part of any setup. */
export interface ScanPick {
  readonly asked: Asked | null;
  /** Where the cross is that keys and taps move over the scan; null = it is not out. */
  readonly cross: ScanHit | null;
  /** The last step found no scan. */
  readonly isAtEdge: boolean;
  /** Moves the cross by so many pixels of the picture, or brings it out; null while no scan is drawn to be pressed. */
  readonly moveCross: ((right: number, down: number) => void) | null;
}

const NOTHING: ScanPick = { asked: null, cross: null, isAtEdge: false, moveCross: null };

export const scanPick = createStore<ScanPick>()(() => NOTHING);

/** Follows it. The selector must give a primitive or something that already existed. */
export function useScanPick<T>(selector: (pick: ScanPick) => T): T {
  return useStore(scanPick, selector);
}

/** How far the page was scrolled before the picture was given the window, where it does not stand beside the fields; null = it was not. */
let scrolledTo: number | null = null;

/** Asks for a press, in place of what was asked for before. */
export function askForPress(asked: Asked): void {
  if (matchMedia("(max-width: 900px)").matches && !stageSettings.getState().isFilled) {
    scrolledTo = scrollY;
    setStage({ isFilled: true });
  }
  scanPick.setState({ asked, cross: null, isAtEdge: false });
}

/** Takes where the cross is. */
export function takeCross(): void {
  const { asked, cross } = scanPick.getState();
  if (asked?.on !== "scan" || cross === null) return;
  endPick();
  asked.take(cross);
}

/** Nothing is asked for any longer. */
export function endPick(): void {
  scanPick.setState({ asked: null, cross: null, isAtEdge: false });
  if (scrolledTo === null) return;
  const top = scrolledTo;
  scrolledTo = null;
  setStage({ isFilled: false });
  // The fields are as tall again once they are laid out.
  requestAnimationFrame(() => scrollTo({ top, behavior: "instant" }));
}

/** Index of the body part that is pressed on now, to be drawn alone; null = the truck is drawn. */
export function pressedPart({ asked }: ScanPick): number | null {
  return asked?.on === "scan" ? asked.part : null;
}
