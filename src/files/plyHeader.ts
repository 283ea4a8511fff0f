import { MeshFault } from "./meshBuilder.ts";
import { found, TextScanner } from "./textScanner.ts";

/** Types of numbers, in both spellings in use. */
const SCALARS = {
  char: "int8",
  uchar: "uint8",
  short: "int16",
  ushort: "uint16",
  int: "int32",
  uint: "uint32",
  float: "float32",
  double: "float64",
  int8: "int8",
  uint8: "uint8",
  int16: "int16",
  uint16: "uint16",
  int32: "int32",
  uint32: "uint32",
  float32: "float32",
  float64: "float64",
} as const;

export type PlyScalar = (typeof SCALARS)[keyof typeof SCALARS];

/** Bytes of each type. */
export const SCALAR_BYTES: Readonly<Record<PlyScalar, number>> = {
  int8: 1,
  uint8: 1,
  int16: 2,
  uint16: 2,
  int32: 4,
  uint32: 4,
  float32: 4,
  float64: 8,
};

export interface PlyProperty {
  readonly name: string;
  readonly type: PlyScalar;
  /** Type of a list's count; null = a single number. */
  readonly countType: PlyScalar | null;
}

export interface PlyElement {
  readonly name: string;
  readonly count: number;
  readonly properties: readonly PlyProperty[];
}

export interface PlyHeader {
  readonly format: "ascii" | "binary_little_endian" | "binary_big_endian";
  readonly elements: readonly PlyElement[];
  /** Byte and line (from 1) after the header. */
  readonly end: number;
  readonly line: number;
}

/** Lines. A header says what is in the file; one longer than this is something else. */
const MOST_LINES = 10_000;

/** Reads the header of a PLY file. @throws MeshFault */
export function readPlyHeader(bytes: Uint8Array): PlyHeader {
  const scanner = new TextScanner(bytes);
  const refuse = (mend: string): never => {
    throw new MeshFault(scanner.where, mend);
  };
  if (scanner.restOfLine() !== "ply") refuse('"ply" should stand here; is it a PLY? export it again');
  let format: PlyHeader["format"] | null = null;
  const elements: (PlyElement & { readonly properties: PlyProperty[] })[] = [];
  while (scanner.line <= MOST_LINES && scanner.at < bytes.length) {
    const keyword = scanner.wordOfLine();
    if (keyword === "format") {
      const word = scanner.wordOfLine();
      if (word !== "ascii" && word !== "binary_little_endian" && word !== "binary_big_endian")
        throw new MeshFault(scanner.where, `unknown format ${found(word)}; export it again`);
      format = word;
    } else if (keyword === "element") {
      const name = scanner.wordOfLine();
      const text = scanner.wordOfLine();
      const count = /^\d{1,15}$/.test(text) ? Number(text) : Number.NaN;
      if (!(count >= 0)) refuse(`${found(text)} where a count should be; export it again`);
      if (elements.some((element) => element.name === name))
        refuse(`a second element ${found(name)}; export it again`);
      elements.push({ name, count, properties: [] });
    } else if (keyword === "property") {
      const element = elements.at(-1);
      if (!element) throw new MeshFault(scanner.where, "a property without element; export it again");
      element.properties.push(readProperty(scanner));
    } else if (keyword === "end_header") {
      scanner.skipLine();
      if (format === null) throw new MeshFault("header", "has no format line; export it again");
      return { format, elements, end: scanner.at, line: scanner.line };
    } else if (keyword !== "comment" && keyword !== "obj_info" && keyword !== "") {
      refuse(`unknown word ${found(keyword)} in the header; export it again`);
    }
    scanner.skipLine();
  }
  return refuse("the header does not end; export or copy it again");
}

function readProperty(scanner: TextScanner): PlyProperty {
  const first = scanner.wordOfLine();
  const isList = first === "list";
  const countType = isList ? scalar(scanner.wordOfLine(), scanner) : null;
  const type = scalar(isList ? scanner.wordOfLine() : first, scanner);
  return { name: scanner.wordOfLine(), type, countType };
}

function scalar(word: string, scanner: TextScanner): PlyScalar {
  if (Object.hasOwn(SCALARS, word)) return SCALARS[word as keyof typeof SCALARS];
  throw new MeshFault(scanner.where, `unknown type ${found(word)}; export it again`);
}
