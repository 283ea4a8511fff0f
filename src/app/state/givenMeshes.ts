import type { LoadedMesh, LoadedMeshes, RefusedMesh } from "../../setup/reading/blockReading.ts";
import { valueAt } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";

/** Mesh files by their names, without folders. */
export type MeshFiles = ReadonlyMap<string, LoadedMesh | RefusedMesh>;

/**
 * The mesh files a person picked or dropped. A page is told their names and not their folders, so a setup's
 * `scans/fender.stl` is the file `fender.stl`.
 */
export class GivenMeshes implements LoadedMeshes {
  readonly files: MeshFiles;
  /** The path a setup asked for each name with. */
  readonly #asked = new Map<string, string>();

  constructor(files: MeshFiles = new Map()) {
    this.files = files;
  }

  /** These and others; of two with the same name, the other. */
  with(others: GivenMeshes): GivenMeshes {
    return new GivenMeshes(new Map([...this.files, ...others.files]));
  }

  /** The same files, asked for by nobody yet: for another reading of the setup, which may ask with other paths. */
  forReading(): GivenMeshes {
    return new GivenMeshes(this.files);
  }

  get(file: string): LoadedMesh | RefusedMesh {
    const name = file.slice(file.lastIndexOf("/") + 1);
    const before = this.#asked.get(name) ?? file;
    this.#asked.set(name, before);
    if (before !== file)
      return { refused: `has the same name as ${JSON.stringify(before)}; rename one of the two files` };
    return (
      this.files.get(name) ?? { refused: "add this mesh file: pick or drop it, with the setup or after it" }
    );
  }

  /** Of the files that could not be read, why. */
  refusedIssues(): readonly SetupIssue[] {
    return [...this.files].flatMap(([file, mesh]) =>
      "refused" in mesh ? [{ file, key: "", value: "", mend: mesh.refused }] : [],
    );
  }
}

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
