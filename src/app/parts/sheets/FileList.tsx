import "./sheets.css";
import { drawnBytes } from "../../../files/drawnBytes.ts";
import type { ShopFile } from "../../../studies/drawings/shopFile.ts";
import { fileWords } from "../../../studies/wording/drawingWords.ts";
import { saveAs } from "../saveAs.ts";
import type { SavedFile } from "../useSaving.ts";

const TYPES: Readonly<Record<ShopFile["contents"]["format"], string>> = {
  pdf: "application/pdf",
  svg: "image/svg+xml",
  dxf: "image/vnd.dxf",
  csv: "text/csv",
  stl: "model/stl",
  glb: "model/gltf-binary",
  step: "model/step",
};

/** A drawing as a file to save. */
export function drawingFile({ file, kind, scale, paper, contents }: ShopFile): SavedFile {
  return {
    name: fileWords(kind, scale, paper),
    file,
    type: TYPES[contents.format],
    make: () => drawnBytes(contents) as BlobPart,
  };
}

/** Every file that the command line would write, each to be saved. */
export function FileList({ files }: { files: readonly ShopFile[] }) {
  return (
    <ul className="drawing-files" aria-label="Files to save">
      {files.map(({ file, kind, scale, paper, contents }) => (
        <li key={file}>
          <span>
            {file} <small>{fileWords(kind, scale, paper)}</small>
          </span>
          <button
            type="button"
            className="button"
            aria-label={`Save ${file}`}
            onClick={() => saveAs(file, TYPES[contents.format], drawnBytes(contents) as BlobPart)}
          >
            Save
          </button>
        </li>
      ))}
    </ul>
  );
}
