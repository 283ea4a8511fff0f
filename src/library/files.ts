/** `wellsweep/files`: meshes and drawings as bytes and text. Lengths are millimeters unless a name says otherwise. */

export { drawnBytes } from "../files/drawnBytes.ts";
export { isMeshName, type MeshResult, readMesh } from "../files/readMesh.ts";
export { dxfText } from "../files/writeDxf.ts";
export { glbBytes } from "../files/writeGlb.ts";
export { pdfBytes } from "../files/writePdf.ts";
export { stlBytes } from "../files/writeStl.ts";
export { svgText } from "../files/writeSvg.ts";
export type { SectionDrawing } from "../geometry/sectionDrawing.ts";
