import { valueAt } from "../../setup/types/keyPath.ts";

/** Names, without folders, of the mesh files that a document's body parts ask for, in the setup itself or any variant. */
export function meshNamesIn(document: unknown): ReadonlySet<string> {
  const variants = valueAt(document, ["variants"]);
  const patches = Array.isArray(variants) ? variants.map((entry) => valueAt(entry, ["patch"])) : [];
  const bodies = [document, ...patches].map((one) => valueAt(one, ["truck", "body"]));
  const files = bodies.flatMap((body) =>
    Array.isArray(body) ? body.map((part) => valueAt(part, ["file"])) : [],
  );
  return new Set(
    files.flatMap((file) => (typeof file === "string" ? [file.slice(file.lastIndexOf("/") + 1)] : [])),
  );
}
