/** A page of the documents: name, title, and in plain words what is in it. */
type Listed = readonly [page: string, title: string, about: string];

/** The first to read, by what somebody does. */
export const GUIDES: readonly Listed[] = [
  [
    "guide-builder",
    "Five minutes for a builder",
    "A truck in the air: what touches, where, and how low it may go.",
  ],
  ["guide-designer", "Five minutes for a designer", "A knuckle to draw: what each of its dimensions moves."],
  [
    "guide-salesperson",
    "Five minutes for a salesperson",
    "A customer at the counter: wide or narrow, shown and said.",
  ],
];

/** What is looked up: by the job's steps, then what is behind it; what is typed outside the page comes last. */
export const LOOKED_UP: readonly Listed[] = [
  [
    "definitions",
    "What each number means",
    "Every word and number: where it is measured, and which way is plus.",
  ],
  ["measuring-in", "Measuring a truck in", "The worksheet, with a tape, a plumb bob and a phone."],
  [
    "measure",
    "Points from tape, plumb bob and angle finder",
    "How readings make the truck, and which one to doubt.",
  ],
  [
    "floor",
    "Stance and floor",
    "Each wheel at its own height, a body that rolls, and what comes near the ground.",
  ],
  [
    "limits",
    "Limits of joints, stops and shocks",
    "What ends the travel or the steering before anything touches.",
  ],
  ["air", "Air springs", "Pressure, height and load, and how far one can let the truck down."],
  ["geometry", "Geometry and alignment", "Camber, caster, toe and bump steer, and how they are worked out."],
  ["envelope", "The swept envelope", "All the room that tire and rim take, as a body to save."],
  ["window", "Windows: how narrow, how wide", "From where to where one dimension may go."],
  ["solve", "What to set: solve for a wanted number", "Say the number you want and see what gives it."],
  ["chart", "Fit charts", "Which wheels and tires go together, in one table."],
  ["change", "What to change", "The smallest change that makes a truck clear."],
  ["odds", "Odds", "How likely it clears when no number is exact."],
  ["from-wish-to-part", "From a wish to a checked part", "One order from start to finish."],
  ["order", "Orders", "What knuckle a shop is to make, and what is still open."],
  ["loads", "Loads", "What the knuckle carries, what that does to it, and what it weighs. Never a verdict."],
  ["drawings", "Drawings", "Cut list, templates and plates for the shop floor."],
  [
    "jig-and-as-built",
    "Jig and as-built",
    "What to read off the jig, and what a welded knuckle does on the truck.",
  ],
  ["certified-gaps", "How a gap is proven", "Why no pose between two looked at is missed."],
  ["costs", "What it costs in time", "How long answers take, and what makes them longer."],
  ["command-line", "The command line", "The same answers in a terminal, for scripts."],
];

/** Every page the reader lists. */
export const PAGES = [...GUIDES, ...LOOKED_UP];
