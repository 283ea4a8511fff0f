import { nearestWord } from "../../units/words.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MAX_NAMED, MIN_SEPARATION } from "../reading/limits.ts";
import { difference, norm } from "../reading/pointMath.ts";
import { BUILT_IN_JOINTS, type BuildSetup } from "../types/buildTypes.ts";
import { shareAlong } from "../types/jointPlaces.ts";
import type { Point } from "../types/truckTypes.ts";

/** Adds an issue for every name of no joint or member, for members without length, and for those that hang on nothing. */
export function refuseWrongJoints(
  build: BuildSetup,
  places: ReadonlyMap<string, Point> | null,
  reading: BlockReading,
): void {
  const builtIn: readonly string[] = BUILT_IN_JOINTS;
  build.joints.forEach(({ name }, i) => {
    if (builtIn.includes(name))
      reading.issue(
        ["joints", i, "name"],
        name,
        "is the name of a joint that every knuckle has; call it otherwise",
      );
  });
  const known = [
    ...builtIn.filter((name) => name !== "pinRoot" || build.pin),
    ...build.joints.map((j) => j.name),
  ];
  const refuseUnknown = (name: string, ...path: (string | number)[]) => {
    if (known.includes(name)) return;
    const mend =
      name === "pinRoot" ? "needs build.pin, whose steps start there" : noSuch("joint", name, known);
    reading.issue(path, name, mend);
  };
  build.members.forEach(({ from, to }, i) => {
    refuseUnknown(from, "members", i, "from");
    refuseUnknown(to, "members", i, "to");
    const [a, b] = [places?.get(from), places?.get(to)];
    if (from === to || (a && b && norm(difference(a, b)) < MIN_SEPARATION))
      reading.issue(["members", i, "to"], to, "must be another place than from, at least 1 mm away");
  });
  if (build.caliperAt !== null) refuseUnknown(build.caliperAt, "caliperAt");
  refuseWrongWelds(build, reading);
  if (reading.isSound()) refuseLoose(build, places, reading);
}

function refuseWrongWelds({ members, welds }: BuildSetup, reading: BlockReading): void {
  const weldable = members.filter(({ kind }) => kind !== "link").map(({ name }) => name);
  const seen = new Set<string>();
  welds.forEach(({ member, end }, i) => {
    if (!weldable.includes(member))
      reading.issue(["welds", i, "member"], member, noSuch("tube or bar", member, weldable));
    const place = JSON.stringify([member, end]);
    if (seen.has(place)) reading.issue(["welds", i, "end"], end, "this end of the member has a weld already");
    seen.add(place);
  });
}

function noSuch(what: string, name: string, known: readonly string[]): string {
  const near = nearestWord(name.slice(0, 200), known);
  if (near !== null) return `no such ${what}; did you mean ${JSON.stringify(near)}?`;
  if (known.length === 0) return `no such ${what}; there is none`;
  const some = known.slice(0, MAX_NAMED).map((one) => JSON.stringify(one));
  return `no such ${what}; there are ${some.join(", ")}${known.length > MAX_NAMED ? ", …" : ""}`;
}

/** A member that no way over members, and over joints in one place or on a member's line, joins to the first one. */
function refuseLoose(
  { members }: BuildSetup,
  places: ReadonlyMap<string, Point> | null,
  reading: BlockReading,
): void {
  if (places === null || members.length === 0) return;
  const met = new Set([0]);
  for (let grew = true; grew; ) {
    grew = false;
    members.forEach((member, i) => {
      if (met.has(i)) return;
      const meets = [...met].some((j) => touch(member, members[j]!, places));
      if (!meets) return;
      met.add(i);
      grew = true;
    });
  }
  members.forEach(({ name }, i) => {
    if (met.has(i)) return;
    const mend = `meets no member that is joined to ${JSON.stringify(members[0]!.name)}; let it start or end at a joint they share or on its line`;
    reading.issue(["members", i], name, mend);
  });
}

type Ends = { readonly from: string; readonly to: string };

function touch(a: Ends, b: Ends, places: ReadonlyMap<string, Point>): boolean {
  const on = (name: string, line: Ends) =>
    shareAlong(places.get(name)!, places.get(line.from)!, places.get(line.to)!) !== null;
  return on(a.from, b) || on(a.to, b) || on(b.from, a) || on(b.to, a);
}
