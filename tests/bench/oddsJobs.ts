import { oddsOf } from "../../src/studies/odds/oddsOf.ts";
import { windowSubject } from "../studies/window/windowSubject.ts";
import type { Job } from "./job.ts";

export const DRAWS = 2000;

/** ms of processor time: ten seconds on two cores, which the page shares the draws out to. */
const AIM = 20_000;

/** The plain truck, and its variant that clears, of which every draw takes a proof. */
export const ODDS_TRUCKS = [null, "narrow hub face"].map((variant) => ({
  variant,
  name: `odds of the plain truck${variant === null ? "" : `, ${variant}`}, ${DRAWS} draws`,
}));

export function oddsJobs(): Job[] {
  return ODDS_TRUCKS.map(({ variant, name }) => {
    const { subject } = windowSubject("half-ton-on-air.json", variant);
    return {
      name,
      each: "odds",
      size: 1,
      repeats: 2,
      aimMs: AIM,
      run: () => oddsOf(subject, { draws: DRAWS }).clears * DRAWS + 1,
    };
  });
}
