import { solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { toldVerdict } from "../doubts/doubt.ts";
import { endsTravels, type WayEnds } from "../map/wayEnds.ts";
import type { Model } from "../model/model.ts";
import type { CheckReport } from "../reports/check.ts";
import { amountText, isFoundAlike, lengthText, readsAlike, tellingFormat } from "./lengths.ts";
import { nameOfHeight, travelText } from "./poseWords.ts";
import { type LowStop, lowStop, type SteerStop, steerStop } from "./stopFacts.ts";
import { farText } from "./stopTexts.ts";

/** A truck with what is known of it so far. */
export interface KnownTruck {
  readonly model: Model;
  readonly report: CheckReport;
  /** null = not known, or not all of it. */
  readonly ways: WayEnds | null;
}

/** What a change did to the main numbers. */
export interface ChangeTold {
  /** Of the worst gap; without a full stop. */
  readonly worst: string;
  /** What stands beside the worst gap as it is now: `was 3/16 in`. */
  readonly before: string;
  /** What else reads otherwise now, each as `scrub radius was 1 in, now 7/8 in`. */
  readonly others: readonly string[];
}

/** A truck before a change and after it: worst gap, then lowest, steer and scrub radius where they differ. */
export function changeTold(was: KnownTruck, now: KnownTruck, format: LengthFormat): ChangeTold {
  const others = [lowestWords(was, now, format), steerWords(was, now, format), scrubWords(was, now, format)];
  return { ...worstTold(was, now, format), others: others.filter((words) => words !== "") };
}

function worstTold(was: KnownTruck, now: KnownTruck, format: LengthFormat): Omit<ChangeTold, "others"> {
  // Of a check that ended early nobody knows what the gap was.
  const a = toldVerdict(was.report) === "unfinished" ? null : (was.report.worst?.gap ?? null);
  const b = now.report.worst?.gap ?? null;
  if (b === null) return { worst: "no gap is measured now", before: "" };
  const shown = a === null ? format : tellingFormat([a, b], gapWords, format);
  const isOpen = toldVerdict(now.report) === "unfinished";
  const after = `${isOpen ? "so far " : ""}${gapWords(b, shown)}`;
  if (a === null) return { worst: `worst gap now ${after}`, before: "" };
  if (isFoundAlike(a, b, "length")) return { worst: `worst gap still ${after}`, before: "as before" };
  const before = `was ${gapWords(a, shown)}`;
  return { worst: `worst gap ${before}, now ${after}`, before };
}

/** `3/16 in`, or `1/4 in of rub`. */
function gapWords(gap: number, format: LengthFormat): string {
  return `${amountText(gap, format, true)}${gap < 0 ? " of rub" : ""}`;
}

/** "" where both read the same, or one is not known. */
function changed(name: string, was: string | null, now: string | null): string {
  return was === null || now === null || was === now ? "" : `${name} was ${was}, now ${now}`;
}

/** How low it goes at full lock, of the lock that ends it sooner. */
function lowestWords(was: KnownTruck, now: KnownTruck, format: LengthFormat): string {
  const text = ({ model, ways }: KnownTruck) => {
    const lows = (ways?.lowering ?? []).flatMap((way) =>
      way.ok ? [lowStop(way.touch, way.steer, model, format)] : [],
    );
    const [first] = lows.sort((a, b) => Number(b.isNowhere) - Number(a.isNowhere) || a.travel - b.travel);
    return first === undefined || first.stop === "unproven" ? null : lowText(first, format);
  };
  return changed("lowest at full lock", text(was), text(now));
}

function lowText(stop: LowStop, format: LengthFormat): string {
  if (stop.isNowhere) return "nowhere";
  return stop.stop === "end" ? "full bump" : travelText(stop.travel, format);
}

/** How far it steers at the lowest stance, to the side that ends sooner. */
function steerWords(was: KnownTruck, now: KnownTruck, format: LengthFormat): string {
  const { stances } = now.model.setup;
  const lowest = stances.length === 0 ? 0 : Math.max(...stances.map(({ travel }) => travel));
  const text = ({ model, ways }: KnownTruck) => {
    const way = ways?.steering[endsTravels(model.setup).indexOf(lowest)];
    if (!way?.ok) return null;
    const turns = [way.leftTurn, way.rightTurn].map(({ touch }) => steerStop(touch.either, lowest, model));
    const [first] = turns.sort((a, b) => Number(b.isNowhere) - Number(a.isNowhere) || a.percent - b.percent);
    return first!.stop === "unproven" ? null : steerText(first!);
  };
  return changed(`steer at ${nameOfHeight(lowest, now.model, format)}`, text(was), text(now));
}

function steerText(stop: SteerStop): string {
  if (stop.isNowhere) return "none";
  return stop.stop === "end" ? "lock to lock" : farText(stop);
}

function scrubWords(was: KnownTruck, now: KnownTruck, format: LengthFormat): string {
  const [a, b] = [was, now].map(({ model }) => {
    const pose = solvePose(model.frontEnd, 0, 0);
    return pose.ok ? pose.left.scrubRadius : null;
  }) as [number | null, number | null];
  if (a === null || b === null || readsAlike(a, b)) return "";
  const shown = tellingFormat([a, b], lengthText, format);
  return changed("scrub radius", lengthText(a, shown), lengthText(b, shown));
}
