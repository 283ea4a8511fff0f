import opening from "../../../../shared/half-ton-limits.json?raw";

/** A truck that comes with the workbench, fetched when it is asked for. */
export interface ExampleTruck {
  readonly file: string;
  readonly name: string;
  /** What there is to find. */
  readonly about: string;
  readonly text: () => Promise<{ readonly default: string }>;
  /** The scan that its setup names, by its address. */
  readonly mesh?: { readonly file: string; readonly address: () => Promise<{ readonly default: string }> };
}

export const EXAMPLE_TRUCKS: readonly ExampleTruck[] = [
  {
    file: "half-ton-on-air.json",
    name: "Half-ton on air",
    about: "rack behind the axle; a fender lip in the tire’s way",
    text: () => import("../../../../shared/half-ton-on-air.json?raw"),
  },
  {
    file: "half-ton-limits.json",
    name: "Half-ton, aligned and on bags",
    about: "the same with shims, joints, stops, air springs and the floor",
    // In the page already, which opens with it.
    text: async () => ({ default: opening }),
  },
  {
    file: "long-bed-steering-box.json",
    name: "Long bed with a steering box",
    about: "a hose near the tire, an idler bracket mounted low, a shock too short",
    text: () => import("../../../../shared/long-bed-steering-box.json?raw"),
  },
  {
    file: "compact-front-steer.json",
    name: "Compact, rack ahead of the axle",
    about: "short arms, millimeters; what a narrow hub face runs into",
    text: () => import("../../../../shared/compact-front-steer.json?raw"),
  },
  {
    file: "flatbed-long-arms.json",
    name: "Flatbed, long arms, steering box ahead",
    about: "a tie rod end in the barrel, a crossmember under the scrub line",
    text: () => import("../../../../shared/flatbed-long-arms.json?raw"),
  },
  {
    file: "ordered-knuckle.json",
    name: "Short bed, knuckle on order",
    about: "narrowed 3/4 in and dropped 2 1/2 in, with its order sheet",
    text: () => import("../../../../shared/ordered-knuckle.json?raw"),
  },
  {
    file: "tubular-knuckle.json",
    name: "Half-ton on a tubular knuckle",
    about: "what posts, braces and welds carry, and what it weighs without braces",
    text: () => import("../../../../shared/tubular-knuckle.json?raw"),
  },
];

/** Trucks that show one thing each; a page of the docs goes with each. */
export const WORKED_TRUCKS: readonly ExampleTruck[] = [
  {
    file: "between-the-locks.json",
    name: "Worst between the locks",
    about: "clears straight ahead and at both locks, rubs half way",
    text: () => import("../../../../shared/worked/between-the-locks.json?raw"),
  },
  {
    file: "narrow-meets-frame.json",
    name: "A narrow face that meets the frame",
    about: "what the fender gains the frame loses",
    text: () => import("../../../../shared/worked/narrow-meets-frame.json?raw"),
  },
  {
    file: "droop-binds-rod-end.json",
    name: "Droop that binds a rod end",
    about: "nothing touches, but a joint is at its end",
    text: () => import("../../../../shared/worked/droop-binds-rod-end.json?raw"),
  },
  {
    file: "barrel-meets-rod-end.json",
    name: "A small wheel on the rod end",
    about: "rubs at every pose",
    text: () => import("../../../../shared/worked/barrel-meets-rod-end.json?raw"),
  },
  {
    file: "bent-fender.json",
    name: "The scan of a bent fender",
    about: "one side rubs where the tape found nothing",
    text: () => import("../../../../shared/worked/bent-fender.json?raw"),
    mesh: { file: "bent-fender.stl", address: () => import("../../../../shared/worked/bent-fender.stl?url") },
  },
  {
    file: "thin-margin.json",
    name: "A margin thinner than the tape",
    about: "clears by its numbers; the numbers are not that sure",
    text: () => import("../../../../shared/worked/thin-margin.json?raw"),
  },
];
