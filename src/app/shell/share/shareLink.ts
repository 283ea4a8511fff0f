import { type Address, addressOf, hashOf } from "../../state/address.ts";
import type { CounterState } from "../../state/counterStore.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";
import { base36Of, bytesOfBase36 } from "./base36.ts";
import { inflated, isPackingReady, packJson, unpackJson } from "./packedText.ts";

/** Before the packed setup in a link's hash: what it is and the version of the packing. */
const PREFIX = "setup=2.";

/** Links of the first version still open. */
const FIRST_PREFIX = "setup=1.";

/** After it, where in the page it was shared; left out of a comparison, which is shared at the counter. */
const AT = "&at=";
const COUNTER: Address = { station: "show", layer: "counter" };

/** After that, the pose it was shared at: travel in mm and steering, where it is not the one a truck opens at. */
const POSE = "&pose=";

/** Characters. Mail and chat programs cut or refuse longer links; browsers take more. */
export const MAX_LINK_CHARACTERS = 32_000;

/** A link, or why there is none (one sentence without a full stop). */
export type ShareLink =
  | { readonly ok: true; readonly url: string }
  | { readonly ok: false; readonly mend: string };

/** What is shared. */
export interface Shared {
  readonly document: TypedDocument;
  readonly file: string;
  /** mm, + = bump. Default 0. */
  readonly travel?: number;
  /** −1 … +1. Default 0. */
  readonly steer?: number;
  /** What was chosen at the counter, where that is what is shared. */
  readonly counter?: SharedChoice;
}

/** What was chosen at the counter, and whether the trucks stand there aligned. */
export interface SharedChoice extends CounterState {
  readonly isAligned: boolean;
}

/**
 * A link that holds the whole setup, variants and all, after its `#`: no server ever sees it. Meshes typed into the setup
 * are in it; mesh files are not, and a setup that needs some is refused.
 * @param page the page's address; its hash says from which station it is shared
 * @param meshNames mesh files the setup asks for
 */
export async function shareLink(
  shared: Shared,
  page: string,
  meshNames: ReadonlySet<string>,
): Promise<ShareLink> {
  if (meshNames.size > 0) {
    const names = [...meshNames].map((name) => JSON.stringify(name)).join(", ");
    return {
      ok: false,
      mend: `a link cannot hold mesh files (${names}); send the setup file with them instead`,
    };
  }
  if (!(await isPackingReady())) return UNFETCHED;
  const { file, document, counter } = shared;
  const packed = base36Of(await packJson({ file, setup: document, ...(counter && { counter }) }));
  const [below = "", hash = ""] = page.split("#", 2);
  const at = counter ? "" : `${AT}${hashOf({ station: addressOf(hash).station, layer: null }).slice(1)}`;
  const { travel = 0, steer = 0 } = shared;
  const pose = travel === 0 && steer === 0 ? "" : `${POSE}${+travel.toFixed(3)},${+steer.toFixed(5)}`;
  const url = `${below}#${PREFIX}${packed}${at}${pose}`;
  if (url.length > MAX_LINK_CHARACTERS) {
    const mend = `the link would be ${url.length} characters long, and many programs cut links past ${MAX_LINK_CHARACTERS}; send the setup file instead`;
    return { ok: false, mend };
  }
  return { ok: true, url };
}

/** What a hash held; `null` = it is no shared setup at all. */
export type ReadLink = { readonly address: Address } & (
  | { readonly ok: true; readonly shared: Shared }
  | {
      readonly ok: false;
      readonly mend: string;
      /** The link may be sound: what reads it is not here yet, and it can be opened once it is. */
      readonly isUnread?: true;
    }
);

/** Whether a hash is a shared setup, readable or not. */
export function isShareLink(hash: string): boolean {
  return /^#?setup=/.test(hash);
}

/** Unpacks a hash, with or without its `#`. Never rejects. @param isReady whether what unpacks it is here */
export async function readShareLink(hash: string, isReady = isPackingReady): Promise<ReadLink | null> {
  if (!isShareLink(hash)) return null;
  const [text = "", where = ""] = hash.replace(/^#/, "").split(AT, 2);
  const [at = "", pose = ""] = where.split(POSE, 2);
  const address = addressOf(at);
  const prefix = [PREFIX, FIRST_PREFIX].find((one) => text.startsWith(one));
  if (prefix === undefined) {
    return {
      ok: false,
      address,
      mend: "this link was made by a newer version; reload the page to get it, then open it again",
    };
  }
  if (prefix === PREFIX && !(await isReady())) return { ...UNREAD, address };
  try {
    const packed = text.slice(prefix.length);
    const read = prefix === PREFIX ? await unpackJson(bytesOfBase36(packed)) : firstRead(packed);
    if (!isObject(read) || !isObject(read.setup) || typeof read.file !== "string") return { ...CUT, address };
    const counter = choiceOf(read.counter);
    const shared = { document: read.setup, file: read.file, ...(counter && { counter }), ...poseOf(pose) };
    return { ok: true, address: counter && at === "" ? COUNTER : address, shared };
  } catch {
    return { ...CUT, address };
  }
}

/** What was cut off or is no number is left out. */
function poseOf(text: string): Pick<Shared, "travel" | "steer"> {
  const [travel, steer] = text.split(",").map(Number);
  if (text === "" || !Number.isFinite(travel) || !Number.isFinite(steer)) return {};
  return { travel: travel!, steer: Math.min(1, Math.max(-1, steer!)) };
}

/** What a link says was chosen at the counter; it may say anything. */
function choiceOf(read: unknown): SharedChoice | null {
  if (!isObject(read)) return null;
  const name = (value: unknown) => (value === null || typeof value === "string" ? value : undefined);
  const mm = (value: unknown) => (typeof value === "number" && Number.isFinite(value) ? value : null);
  return {
    first: name(read.first),
    second: name(read.second),
    travel: mm(read.travel),
    hubFace: mm(read.hubFace),
    isAligned: read.isAligned === true,
  };
}

const UNFETCHED = {
  ok: false,
  mend: "the part of this page that links need could not be fetched; reload the page with a network, then try again",
} as const;

const UNREAD = {
  ok: false,
  isUnread: true,
  mend: "the part of this page that opens links could not be fetched; the link stays in the address, so reload the page with a network to open it",
} as const;

const CUT = {
  ok: false,
  mend: "this link holds no setup that can be read; it may have been cut off on its way, so copy all of it again",
} as const;

/** What a link of the first version held: plainly deflated, in the letters of RFC 4648, section 5, without padding. */
function firstRead(packed: string): unknown {
  const binary = atob(packed.replaceAll("-", "+").replaceAll("_", "/"));
  const bytes = Uint8Array.from(binary, (character) => character.charCodeAt(0));
  return JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(inflated(bytes)));
}

function isObject(value: unknown): value is TypedDocument {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
