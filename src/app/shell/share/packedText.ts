import { deflateSync, Inflate } from "fflate";

/** Characters unpacked. A short link must not unpack to something that stalls the page. */
const MAX_TEXT_CHARACTERS = 8 * 1024 * 1024;

/** Bytes unpacked at a time: they become at most a thousand times as many before the length is looked at. */
const PIECE = 1024;

/**
 * What a setup's text is full of, each written as one control character before it is packed: none of those stands in JSON (RFC
 * 8259). Their order is in every link: it never changes.
 */
const OFTEN: readonly string[] = [
  ...['"],["', '","', '":["', '"],"', '":{"', '":"', '"},"', "],[", '},{"'],
  ...["1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2"].map((part) => ` ${part}`),
  ...["9/16", "5/8", "11/16", "3/4", "13/16", "7/8", "15/16"].map((part) => ` ${part}`),
];

/** ms. Nothing waits longer for the texts: a network may take a request and never answer it. */
const MAX_WAIT = 10_000;

/**
 * Whether the texts that packing needs are here, fetched with the first link; false = the network kept them back, or has not
 * brought them in `MAX_WAIT`. Never rejects.
 */
export async function isPackingReady(texts: Promise<unknown> = knownTexts()): Promise<boolean> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<boolean>((done) => {
    timer = setTimeout(() => done(false), MAX_WAIT);
  });
  const fetched = texts.then(
    () => true,
    () => false,
  );
  return Promise.race([fetched, late]).finally(() => clearTimeout(timer));
}

/** JSON packed: deflated (RFC 1951) with the texts that page and link both know, behind its checksum. */
export async function packJson(value: unknown): Promise<Uint8Array> {
  const text = new TextEncoder().encode(shortened(JSON.stringify(value)));
  const packed = deflateSync(text, { level: 9, dictionary: await knownTexts() });
  return Uint8Array.from([...checksum(text), ...packed]);
}

/** What `packJson` was given. @throws where it is none, was cut off or changed on its way, or unpacks to too much */
export async function unpackJson(bytes: Uint8Array): Promise<unknown> {
  const text = inflated(bytes.subarray(2), await knownTexts());
  const [first, second] = checksum(text);
  if (bytes[0] !== first || bytes[1] !== second) throw new RangeError("packedText: not what was packed");
  return JSON.parse(lengthened(new TextDecoder("utf-8", { fatal: true }).decode(text)));
}

/** What a plainly deflated text was. @throws as `unpackJson` does */
export function inflated(bytes: Uint8Array, dictionary?: Uint8Array): Uint8Array {
  const pieces: Uint8Array[] = [];
  let length = 0;
  const inflate = new Inflate(dictionary ? { dictionary } : {}, (piece) => {
    length += piece.length;
    if (length > MAX_TEXT_CHARACTERS) throw new RangeError("packedText: unpacks to too much");
    pieces.push(piece);
  });
  for (let at = 0; at < bytes.length; at += PIECE)
    inflate.push(bytes.subarray(at, at + PIECE), at + PIECE >= bytes.length);
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

let known: Promise<Uint8Array> | null = null;

/** Every link is packed with the very same texts: the trucks that came with the page when links were first packed so. */
function knownTexts(): Promise<Uint8Array> {
  known ??= import("./knownTexts.txt?raw").then((text) => new TextEncoder().encode(shortened(text.default)));
  // A page that could not fetch them asks again.
  known.catch(() => {
    known = null;
  });
  return known;
}

function shortened(text: string): string {
  return OFTEN.reduce((left, part, at) => left.replaceAll(part, String.fromCharCode(at + 1)), text);
}

function lengthened(text: string): string {
  return OFTEN.reduce((left, part, at) => left.replaceAll(String.fromCharCode(at + 1), part), text);
}

/** Two sums of bytes (Fletcher's checksum, RFC 1146): a changed letter must not open as another number. */
function checksum(bytes: Uint8Array): readonly [number, number] {
  let [sum, sums] = [0, 0];
  for (const byte of bytes) {
    sum = (sum + byte) % 255;
    sums = (sums + sum) % 255;
  }
  return [sum, sums];
}
