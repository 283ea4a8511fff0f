import type { DrawnContents } from "../geometry/drawnFile.ts";
import { glbBytes } from "./writeGlb.ts";
import { pageDxfText } from "./writePageDxf.ts";
import { pageSvgText } from "./writePageSvg.ts";
import { pdfBytes } from "./writePdf.ts";
import { stepText } from "./writeStep.ts";
import { stlBytes } from "./writeStl.ts";

/** The bytes of a file by what it holds. @throws RangeError as the writers do */
export function drawnBytes(contents: DrawnContents): Uint8Array {
  switch (contents.format) {
    case "svg":
      return bytesOf(pageSvgText(contents.page));
    case "dxf":
      return bytesOf(pageDxfText(contents.page, contents.units));
    case "pdf":
      return pdfBytes(contents.pages, contents.title);
    case "csv":
      return bytesOf(contents.text);
    case "stl":
      return stlBytes(
        contents.meshes.map(({ mesh }) => mesh),
        contents.title,
      );
    case "glb":
      return glbBytes(contents.meshes, { about: contents.title, cautions: contents.cautions });
    case "step":
      return bytesOf(stepText(contents.meshes, `${contents.title}. ${contents.cautions}`));
  }
}

function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
