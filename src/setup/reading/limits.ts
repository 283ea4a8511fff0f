/** Every limit of the setup reader: name, unit, reason. */

/** Characters. A file longer than this is not a setup but something else picked by mistake; reading it would stall a page. */
export const MAX_FILE_CHARACTERS = 64 * 1024 * 1024;

/** Levels of nested objects and lists. A setup needs under 10; deeper text can exhaust the stack of whatever reads it. */
export const MAX_DEPTH = 64;

/** mm. 100 m: nothing on a truck is longer, and squares of such lengths still keep nanometers. */
export const MAX_LENGTH = 100_000;

/**
 * kg, N, MPa, mm², mm³: far past any truck (a hundred tons, a hundred times a tire's load, a cutting jet, thirty times the
 * strongest steel, a square meter ten times over), so that no slip of the hand runs over in what is worked out from it.
 */
export const MAX_QUANTITY = {
  weight: 1e5,
  load: 1e7,
  pressure: 1e3,
  stress: 1e5,
  area: 1e7,
  volume: 1e11,
} as const;

/** mm. A micrometer: nothing on a truck is thinner, and what is has no inside to measure to. */
export const MIN_SIZE = 0.001;

/** mm. Points closer than this cannot fix a line: a tape reads no finer. */
export const MIN_SEPARATION = 1;

/** mm. 1/8 in. Sides of the three matched points may differ by this between mesh and truck: a tape reads to about 1/16 in at either end (common practice, no source), and a wrong point is off by more. */
export const MATCHED_SIDE_TOLERANCE = 3.175;

/** mm. Least height of the triangle of the three matched points: the tape's 1/16 in over less would turn the mesh by degrees. */
export const MIN_MATCHED_HEIGHT = 25;

/** Keys of one object. The largest block has under 20; a file with more is something else, picked by mistake. */
export const MAX_KEYS = 1000;

/** Numbers, texts, lists and objects in one setup, all told. A large mesh typed in full has under a million; a larger one belongs in a file beside the setup. */
export const MAX_VALUES = 2_000_000;

/** Entries of a list that is typed or digitized by hand: parts, points, named points. */
export const MAX_ENTRIES = 1000;

/** Variants: each is a whole setup to be read. A shop compares a dozen. */
export const MAX_VARIANTS = 200;

/** Stances: every one is answered by itself in most answers. */
export const MAX_STANCES = 100;

/** Rows and columns of an air spring's chart; makers print a dozen. */
export const MAX_CHART = 100;

/** Members, joints, steps and plates of one knuckle: a large one has two dozen, and a frame's cost grows with the cube. */
export const MAX_MEMBERS = 100;

/** Load cases: each is answered at every pose looked at. */
export const MAX_LOAD_CASES = 50;

/** Times the corner's weight: parts are looked at up to ten; more is a force typed as a multiple. */
export const MAX_MULTIPLE = 100;

/** Mistakes in one list after which the rest of it is not looked at: it is one mistake many times. */
export const MAX_MISTAKES = 1000;

/** Triangles in one mesh; more does not fit a page's memory several times over. */
export const MAX_TRIANGLES = 2_000_000;

/** Points in a tire profile: crossings are looked for pair by pair. */
export const MAX_PROFILE_POINTS = 1000;

/** mm. Rim diameters outside 6 … 60 in are a slip in units, not a truck wheel. */
export const RIM_DIAMETER_RANGE = { least: 152.4, most: 1524 } as const;

/** mm. A tire is made for one rim diameter; a quarter inch off is a measured rim, half an inch another size (16, 16.5). */
export const RIM_FIT = 6.35 + 1e-6;

/** mm. Profile and path points closer than this count as the same point and are dropped. */
export const SAME_POINT = 1e-6;

/** Characters in a name. Longer ones cannot be shown. */
export const MAX_NAME = 200;

/** Characters in a note. A sheet has room for a paragraph. */
export const MAX_NOTE = 1000;

/** Knuckles on one order; more is a slip of the hand. */
export const MAX_QUANTITY_ORDERED = 1000;

/** Issues reported at once; more than this is one mistake many times. */
export const MAX_ISSUES = 50;

/** Characters shown of a file that is no setup: enough to see that it is another file, too few to tell what is in it. */
export const MAX_SHOWN = 12;

/** Names listed where one was asked for that is not there. */
export const MAX_NAMED = 12;

/** Issues kept in full, to tell those of a variant from those of the setup; further ones are counted. */
export const MAX_KEPT_ISSUES = 1000;

/** Places with issues inside one object or list after which all of it counts as unsound, so that asking stays quick. */
export const MAX_PLACES = 200;

/** Readings of one truck: a full list has under fifty, three times over is welcome. */
export const MAX_READINGS = 300;

/** Different points that readings go to: a full list has two dozen, and the cost of solving grows with their cube. */
export const MAX_READ_POINTS = 40;

/** Stations along one stick, and along all: an arch is read every two inches. */
export const MAX_STATIONS = 100;
export const MAX_ALL_STATIONS = 300;

/** mm. 10 m: nothing that is read on a truck is farther apart. */
export const MAX_READ = 10_000;

/** mm and rad. What a gauge of a measuring room reads; finer is a slip, and divides by next to nothing. */
export const LEAST_WITHIN = 0.001;
export const LEAST_WITHIN_ANGLE = 1e-5;
