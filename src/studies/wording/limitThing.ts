import type { Side } from "../../suspension/frontEnd.ts";

/** What it is of a limit that is met or passed: a joint has a cone and planes, a rod end an angle; a stop is a thing itself. */
export function limitThing(name: string): string {
  const [joint, plane] = name.split(", ");
  if (plane !== undefined) return `${joint}'s limit ${plane}`;
  if (/ball joint$/.test(name)) return `${name}'s cone`;
  if (/ end$/.test(name)) return `${name}'s angle`;
  return /compression$|extension$/.test(name) ? `${name} limit` : name;
}

/** The thing that stops the truck: of an air spring or shock the thing itself, whichever end of it is met. */
export function limitStopper(name: string): string {
  const thing = limitThing(name);
  return thing.replace(/ (?:compression|extension) limit$/, "");
}

/** A limit that is met, as a clause: a stop or strap is met, a joint, spring or shock is at its limit. @param side null = either */
export function limitMet(name: string, side: Side | null = null): string {
  const [thing, plane] = name.replace(/ (?:compression|extension)$/, "").split(", ");
  const who = `the ${side === null ? "" : `${side} `}${thing}`;
  if (/ (?:stop|strap)$/.test(name)) return `${who} is met`;
  return `${who} is at its limit${plane === undefined ? "" : ` ${plane}`}`;
}
