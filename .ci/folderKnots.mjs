// Folders, like files, know each other one way only. A folder's own files and its subfolders count as two, so that
// a room's ground floor cannot lean on its attic while the attic leans on it. Reads what dependency-cruiser found
// (`depcruise --output-type json`) from standard input; tells the rules it found broken, which in that form it does not,
// and draws each knot with the arrows that tie it. Exits 1 where there is either.
import { posix } from "node:path";
import { text } from "node:stream/consumers";

const { modules, summary } = JSON.parse(await text(process.stdin));
const broken = summary.violations.filter(({ rule }) => rule.severity === "error");
for (const { rule, from, to, cycle } of broken)
  console.error(`${rule.name}: ${[from, ...(cycle?.map(({ name }) => name) ?? [to])].join(" → ")}`);
const arrows = new Map();
for (const { source, dependencies } of modules) {
  if (!source.startsWith("src/")) continue;
  for (const { resolved } of dependencies) {
    const [from, to] = [posix.dirname(source), posix.dirname(resolved)];
    if (from === to || !resolved.startsWith("src/") || !/\.tsx?$/.test(resolved)) continue;
    const beyond = arrows.get(from) ?? new Map();
    beyond.set(to, [...(beyond.get(to) ?? []), `${source} → ${resolved}`]);
    arrows.set(from, beyond);
  }
}

/** Every folder that can be reached from one, itself only by way of another. */
function reached(start) {
  const seen = new Set();
  const open = [start];
  while (open.length > 0)
    for (const next of arrows.get(open.pop())?.keys() ?? [])
      if (!seen.has(next)) {
        seen.add(next);
        open.push(next);
      }
  return seen;
}

const reach = new Map([...arrows.keys()].map((folder) => [folder, reached(folder)]));
const told = new Set();
for (const [folder, beyond] of reach) {
  if (!beyond.has(folder) || told.has(folder)) continue;
  const knot = [...beyond].filter((other) => reach.get(other)?.has(folder)).sort();
  for (const one of knot) told.add(one);
  console.error(`folders in a knot: ${knot.join(", ")}`);
  for (const from of knot)
    for (const to of knot) {
      const between = arrows.get(from)?.get(to);
      if (between) console.error(`  ${from} → ${to}: ${between.slice(0, 3).join("; ")}`);
    }
}
if (arrows.size === 0) throw new Error("no folder knows another: nothing was read");
console.log(`${modules.length} modules, ${broken.length} arrows against the rules`);
console.log(told.size === 0 ? `✔ ${arrows.size} folders, no knot` : `${told.size} folders in knots`);
process.exitCode = told.size === 0 && broken.length === 0 ? 0 : 1;
