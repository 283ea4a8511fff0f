/** What a result does not say; printed under every table of gaps. */
export const CAUTIONS =
  "Measure twice before cutting or welding: these are distances worked out from the numbers in the setup, and\n" +
  "rubber, bushings and bodies differ. They are not a statement of safety. Knuckles, steering and brakes are for\n" +
  "licensed, qualified people, under the codes that apply where the truck is driven.\n";

/** Printed under every table of limits. */
export const LIMIT_CAUTIONS =
  "A limit kept here is a statement about angles and lengths worked out from the numbers in the setup, not about any\n" +
  "part being fit for the road. What a joint, rod end, shock or air spring allows is for its maker to say; parts wear,\n" +
  "bushings give, and a joint that binds can break. Leave steering and suspension to licensed, qualified people, under\n" +
  "the codes that apply where the truck is driven.\n";

/** Printed under every table of pressures. */
export const AIR_CAUTIONS =
  "Pressures here are worked out from the numbers in the setup. Air under pressure can kill: never go past the limits\n" +
  "the makers give for spring, tank, valves and lines, nor past the codes that apply where the truck is driven, and let\n" +
  "the air out before working on any of it. Never trust air alone to hold a truck up while somebody is under it.\n";

/** Printed under every table of heights over the floor. */
export const FLOOR_CAUTIONS =
  "Heights here are worked out from the numbers in the setup, on a flat floor, loaded as it was\n" +
  "when it was measured. How low a truck may be, how high its bumpers and frame, and what may hang below the scrub line\n" +
  "is law in many places: the codes that apply where the truck is driven rule, not this table. Never reach under a truck\n" +
  "that air or a jack alone holds up.\n";

/** Printed under every order sheet. */
export const ORDER_CAUTIONS =
  "An order says what a part is to measure, not that it can carry what it will. Steering knuckles, ball joints, hubs\n" +
  "and brakes can kill when they fail: what a stud, bearing, brake or thread may be used for is for its maker to say.\n" +
  "Leave design, strength, welding and inspection to licensed, qualified people, under the codes that apply where the\n" +
  "truck is driven. Measure the parts themselves before cutting: catalogs err.\n";
/** Printed under every table of loads, and beside them on the page. */
export const LOADS_CAUTIONS =
  "Forces and stresses here are worked out from the numbers in the setup under load cases that somebody chose. They are\n" +
  "not a statement that a part will hold: welds, heat, fatigue, cracks, wear and abuse are not in them, and a share of\n" +
  "yield under 100% is a share, no more. A knuckle or steering part that breaks can kill. Have it reviewed by a licensed\n" +
  "engineer, and follow the codes that apply where the truck is driven.\n";
