import type { Page } from "./page.ts";
import type { TriangleMesh } from "./triangleMesh.ts";

/** A surface and what it is called. */
export interface NamedMesh {
  readonly name: string;
  readonly mesh: TriangleMesh;
}

/** What a file of a drawing holds, before it is bytes. `units`: of a DXF's numbers. */
export type DrawnContents =
  | { readonly format: "svg"; readonly page: Page }
  | { readonly format: "dxf"; readonly page: Page; readonly units: "in" | "mm" }
  | { readonly format: "pdf"; readonly pages: readonly Page[]; readonly title: string }
  | { readonly format: "csv"; readonly text: string }
  | {
      readonly format: "stl" | "glb" | "step";
      readonly meshes: readonly NamedMesh[];
      readonly title: string;
      readonly cautions: string;
    };
