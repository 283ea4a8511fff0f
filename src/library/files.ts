/** `wellsweep/files`: meshes and drawings as bytes and text. Lengths are millimeters unless a name says otherwise. */

export { isMeshName, type MeshResult, readMesh } from "../files/readMesh.ts";
export type { SectionDrawing } from "../files/sectionDrawing.ts";
export { dxfText } from "../files/writeDxf.ts";
export { glbBytes } from "../files/writeGlb.ts";
export { stlBytes } from "../files/writeStl.ts";
export { svgText } from "../files/writeSvg.ts";
