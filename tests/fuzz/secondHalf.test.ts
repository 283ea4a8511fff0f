import { it } from "vitest";
import { runs } from "../runs.ts";
import { expectNoFaults } from "./fuzzCase.ts";

/** Setups a case. */
const EACH = runs(160, 500);

// The other half is a file of its own, so that two processors share them.
it.each(Array.from({ length: runs(1, 10) }, (_, i) => 5000 + 500 * i))(
  "every verb answers or refuses plainly, and they agree: random setups from seed %d",
  (from) => expectNoFaults(from, from + EACH),
  180_000,
);
