/** What a study answered before its budget was spent. */
const REACHED = {
  check:
    "each gap is one that is there, and its tolerance says how much worse a pose may be that was not looked at",
  nearest: "each gap is one that is there, and a pose that was not looked at may be worse",
  limits: "margins are proven as far as their bounds say, and ways as far as they are told",
  ways: "ways are proven as far as they are told",
  map: "cells marked ? were not looked at, and ways are proven as far as they are told",
  picture: "dotted places were not looked at",
  sweep: "the rows not looked at are left out",
  pose: "gaps not looked at are left out",
  envelope: "the surface is a coarser one than usual, as near as is told below",
  section: "parts not looked at are left out",
} as const;

/** Says that a study ended before it was through, what that means for its answer; `more` = how to have it search longer. */
export function cutShortSentence(study: keyof typeof REACHED | "noEnvelope", more = ""): string {
  if (study === "noEnvelope")
    return `The time allowed did not do for the envelope: there is no surface yet. ${more}`.trimEnd();
  return `This is what was reached in the time allowed, not all of it: ${REACHED[study]}. ${more}`.trimEnd();
}

/** Says that it searches longer. @param seconds at most */
export function longerWords(seconds: number): string {
  return `Searching for up to ${Number(seconds.toPrecision(2))} s`;
}
