import { oddsOf } from "../../src/studies/odds/oddsOf.ts";
import { windowSubject } from "../studies/window/windowSubject.ts";
import type { Job } from "./job.ts";

const DRAWS = 2000;

/** ms of processor time: ten seconds on two cores, which the page shares the draws out to. */
const AIM = 20_000;

/** Odds of the plain truck, and of its variant that clears, of which every draw takes a proof. */
export function oddsJobs(): Job[] {
  return [null, "narrow hub face"].map((variant) => {
    const { subject } = windowSubject("half-ton-on-air.json", variant);
    return {
      name: `odds of the plain truck${variant === null ? "" : `, ${variant}`}, ${DRAWS} draws`,
      each: "odds",
      size: 1,
      repeats: 2,
      aimMs: AIM,
      run: () => oddsOf(subject, { draws: DRAWS }).clears * DRAWS + 1,
    };
  });
}
