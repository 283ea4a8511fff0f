/** What keeps a file from being a mesh. Thrown by the readers of this room and caught in `readMesh`: it never leaves. */
export class MeshFault extends Error {
  override readonly name = "MeshFault";

  /**
   * @param where in the file: `line 12`, `triangle 7`; "" = the file as a whole
   * @param mend what is wrong and what would be right, without a full stop
   */
  constructor(where: string, mend: string) {
    super(where === "" ? mend : `${where}: ${mend}`);
  }
}
