/** What of the library the tests use. */
declare module "occt-import-js" {
  interface ReadMesh {
    readonly attributes: { readonly position: { readonly array: readonly number[] } };
    readonly index: { readonly array: readonly number[] };
    readonly brep_faces: readonly unknown[];
  }
  interface Occt {
    ReadStepFile(
      bytes: Uint8Array,
      options: { readonly linearUnit: "millimeter" | "inch" },
    ): { readonly success: boolean; readonly meshes: readonly ReadMesh[] };
  }
  export default function occtimportjs(): Promise<Occt>;
}
