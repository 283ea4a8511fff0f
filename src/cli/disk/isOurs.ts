import { closeSync, openSync, readSync } from "node:fs";

/** Bytes looked through for the mark. */
const HEAD = 4096;

/**
 * What the files written here say at their beginning: the header of an STL, the generator of a glTF file, the first
 * comments of a DXF, an SVG, a PDF, a STEP file and a cut list. A file that has been saved by another program loses most of them.
 */
const MARKS = [
  /^Wellsweep, mm: /,
  /^glTF.{16}\{"asset":\{"version":"2\.0","generator":"Wellsweep"/s,
  /^ *999\r\nWellsweep (section|drawing), /,
  /^<svg [^>]*>\s*<!-- Wellsweep (section|drawing), /,
  /^%PDF-1\.7\n%Wellsweep drawing, /,
  /^# Wellsweep cut list, /,
  /^ISO-10303-21;\n\/\* Wellsweep drawing, /,
];

/** Whether a file was written by this program, by its mark, or is empty: nothing in it could be lost. */
export function isOurs(path: string): boolean {
  const handle = openSync(path, "r");
  try {
    const head = Buffer.alloc(HEAD);
    const length = readSync(handle, head, 0, HEAD, 0);
    if (length === 0) return true;
    const text = head.subarray(0, length).toString("latin1");
    return MARKS.some((mark) => mark.test(text));
  } finally {
    closeSync(handle);
  }
}
