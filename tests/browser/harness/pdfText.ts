import { inflateSync } from "node:zlib";

/** What a test needs to know of a PDF. */
export interface ReadPdf {
  readonly pages: number;
  /** All text in the order it was drawn, without any white space: a PDF places letters, it has no words. */
  readonly text: string;
}

/**
 * Reads a PDF as the browser prints it: plain objects, deflated streams, every font with its table of characters.
 * @throws Error for a font without a table, whose letters could not be told
 */
export function readPdf(pdf: Buffer): ReadPdf {
  const source = pdf.toString("latin1");
  const objects = objectsOf(source);
  const pages = [...objects.values()].filter(({ head }) => /\/Type\s*\/Page\b/.test(head)).length;
  const tables = new Map<string, ReadonlyMap<number, string>>();
  const tableOf = (font: string): ReadonlyMap<number, string> => {
    const known = tables.get(font);
    if (known) return known;
    const head = objects.get(fontNumber(source, font))?.head ?? "";
    const stream = objects.get(/\/ToUnicode (\d+) 0 R/.exec(head)?.[1] ?? "")?.stream;
    if (!stream) throw new Error(`readPdf: font ${font} has no table of characters`);
    const table = charactersOf(stream);
    tables.set(font, table);
    return table;
  };
  const text = [...objects.values()].map(({ stream }) => (stream ? textOf(stream, tableOf) : "")).join("");
  return { pages, text: text.replace(/\s/g, "") };
}

interface PdfObject {
  readonly head: string;
  readonly stream: string | null;
}

function objectsOf(source: string): Map<string, PdfObject> {
  const objects = new Map<string, PdfObject>();
  for (const match of source.matchAll(/(?:^|\n)(\d+) 0 obj\s*([\s\S]*?)(?:endobj|stream\r?\n)/g)) {
    const [whole, number = "", head = ""] = match;
    const size = Number(/\/Length (\d+)/.exec(head)?.[1] ?? Number.NaN);
    let stream: string | null = null;
    if (whole.endsWith("stream\n") || whole.endsWith("stream\r\n")) {
      const start = match.index + whole.length;
      const bytes = Buffer.from(source.slice(start, start + size), "latin1");
      // Pictures have other filters, or are no text.
      if (/\/FlateDecode/.test(head) && !/\/Image|\/FontFile/.test(head)) {
        stream = inflateSync(bytes).toString("latin1");
      }
    }
    objects.set(number, { head, stream });
  }
  return objects;
}

function fontNumber(source: string, font: string): string {
  return new RegExp(`/${font} (\\d+) 0 R`).exec(source)?.[1] ?? "";
}

/** A font's characters by their codes. */
function charactersOf(table: string): Map<number, string> {
  const characters = new Map<number, string>();
  const letters = (hex: string) => Buffer.from(hex, "hex").swap16().toString("utf16le");
  for (const [, block = ""] of table.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, code = "", hex = ""] of block.matchAll(/<([\dA-F]+)> <([\dA-F]+)>/g)) {
      characters.set(Number.parseInt(code, 16), letters(hex));
    }
  }
  for (const [, block = ""] of table.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, low = "", high = "", hex = ""] of block.matchAll(
      /<([\dA-F]+)> <([\dA-F]+)> <([\dA-F]+)>/g,
    )) {
      const from = Number.parseInt(low, 16);
      for (let code = from; code <= Number.parseInt(high, 16); code++) {
        characters.set(code, String.fromCharCode(Number.parseInt(hex, 16) + code - from));
      }
    }
  }
  return characters;
}

/** The text that a content stream draws. */
function textOf(content: string, tableOf: (font: string) => ReadonlyMap<number, string>): string {
  let drawn = "";
  for (const [, block = ""] of content.matchAll(/\bBT\b([\s\S]*?)\bET\b/g)) {
    let table: ReadonlyMap<number, string> = new Map();
    for (const [, font, hex] of block.matchAll(/\/(\w+) [\d.]+ Tf|<([\dA-F]+)>/g)) {
      if (font) {
        table = tableOf(font);
        continue;
      }
      // Fonts drawn as outlines have codes of one byte.
      const digits = hex!.length % 4 === 0 ? 4 : 2;
      for (let i = 0; i < hex!.length; i += digits) {
        // A space that does not break is in no table; a letter that were not would be missed in the text.
        drawn += table.get(Number.parseInt(hex!.slice(i, i + digits), 16)) ?? "";
      }
    }
  }
  return drawn;
}
