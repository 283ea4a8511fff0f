import { windowOf } from "../../src/studies/window/windowOf.ts";
import { windowSubject } from "../studies/window/windowSubject.ts";
import type { Job } from "./job.ts";

/** The plain truck's hub face over a foot, ends to a tenth of a millimeter. */
export function windowJob(): Job {
  const { subject } = windowSubject("half-ton-on-air.json");
  return {
    name: "windowOf the plain truck's hub face",
    each: "window",
    size: 1,
    repeats: 10,
    aimMs: 1500,
    run() {
      const window = windowOf(subject, "knuckle.hubFace");
      if (!window.ok) throw new Error(window.issues[0]!.mend);
      return window.value.fits.reduce((sum, { from, to }) => sum + from + to, 0);
    },
  };
}

/** Checks that a loop over the same range needs to tell the ends as near. */
export function checksInALoop(): number {
  const { subject } = windowSubject("half-ton-on-air.json");
  const window = windowOf(subject, "knuckle.hubFace");
  if (!window.ok) throw new Error(window.issues[0]!.mend);
  const { from, to, tolerance } = window.value;
  return Math.ceil((to - from) / tolerance);
}
