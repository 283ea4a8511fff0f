import { type ChildProcess, spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, type CDPSession, chromium } from "playwright-core";
import { type FoundBrowser, findBrowser } from "./findBrowser.ts";

/** What is ended without a warning (SIGKILL): the tab's own process, or every process of the browser. */
export type Killed = "tab" | "browser";

/** What one kill cost. */
export interface Loss {
  /** Keys sent before the kill. */
  readonly sent: number;
  /** Of them, those that are in the field when the page is opened again. */
  readonly kept: number;
  /** Of those sent, the keys that the page had answered to before the kill: its handlers had run. */
  readonly heard: number;
  /** ms from the sending of the oldest key that is gone to the kill; 0 = none is gone. */
  readonly age: number;
}

export interface KillOptions {
  readonly killed: Killed;
  /** Where the built page is served. */
  readonly address: string;
  /** Processes that spin beside, so that the machine is busy. Default one for each processor. */
  readonly load?: number;
  /** ms between the last key and the kill, after the page has heard that key. Default none: it comes at any moment. */
  readonly rest?: number;
  /** From 0 to below 1: when the kill comes, and the pace of the keys. */
  readonly random: () => number;
}

/** Where the field is. */
const STATION = "#measure";

const FIELD = '[data-field="knuckle.hubFace"] input';

/** A hub face in inches of which every further digit is another value, and no number of its own is short for another. */
const TYPED = "6.1234567891234";

/** ms between two keys of a quick typist, at least and at most. */
const PACE = [70, 180] as const;

/** ms that a browser gets to tell that a page crashed, or to close. */
const LONGEST_END = 20_000;

/** ms that a page gets to open again. */
const LONGEST_OPENING = 40_000;

/** Keys before the first kill can come: a number with some digits. */
const FIRST_KEYS = 5;

/**
 * Types into the built page, in a browser profile of its own on the disk, kills it at a random moment, opens the page
 * again and tells what was lost of what had been sent.
 * @throws Error when the page holds something that was never typed
 */
export async function killWhileTyping(options: KillOptions): Promise<Loss> {
  const profile = await mkdtemp(join(tmpdir(), "wellsweep-kill-"));
  const found = await findBrowser();
  const spinning = Array.from({ length: options.load ?? availableParallelism() }, spin);
  try {
    const { sent, heard, killedAt, context } = await typeUntilKilled(profile, found, options);
    // The machine may take a breath while the page comes up again: what is lost is lost.
    for (const one of spinning) one.kill("SIGKILL");
    const again = options.killed === "tab" ? context : await openProfile(profile, found);
    const text = await textAfter(again, options.address);
    await end(again);
    const kept = keptOf(text, sent.length);
    const lost = sent[kept];
    return { sent: sent.length, kept, heard, age: lost === undefined ? 0 : killedAt - lost };
  } finally {
    for (const one of spinning) one.kill("SIGKILL");
    await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}

function spin(): ChildProcess {
  return spawn(process.execPath, ["-e", "for (;;);"], { stdio: "ignore" });
}

function openProfile(profile: string, found: FoundBrowser): Promise<BrowserContext> {
  return chromium.launchPersistentContext(profile, {
    executablePath: found.executablePath,
    args: [...found.args],
    env: { ...found.env },
    viewport: { width: 1280, height: 800 },
  });
}

interface Typing {
  /** When each key was sent. */
  readonly sent: readonly number[];
  readonly heard: number;
  readonly killedAt: number;
  readonly context: BrowserContext;
}

async function typeUntilKilled(profile: string, found: FoundBrowser, options: KillOptions): Promise<Typing> {
  const { killed, address, random } = options;
  const context = await openProfile(profile, found);
  const page = await context.newPage();
  for (const other of context.pages()) if (other !== page) await other.close();
  await page.goto(address + STATION, { waitUntil: "load" });
  // While the page still comes up it is not ready to be typed into.
  await page.locator('.verdict [aria-busy="false"]').waitFor({ timeout: 120_000 });
  await page.locator(FIELD).fill("");
  await page.locator(FIELD).focus();
  const processes = await processesOf(context, killed);
  const keys = await context.newCDPSession(page);
  const sent: number[] = [];
  let heard = 0;
  const last = FIRST_KEYS + random() * (TYPED.length - FIRST_KEYS);
  for (const key of TYPED.slice(0, Math.ceil(last))) {
    sent.push(performance.now());
    sendKey(keys, key, () => {
      heard += 1;
    });
    await pause(PACE[0] + random() * (PACE[1] - PACE[0]));
  }
  if (options.rest !== undefined) {
    while (heard < sent.length) await pause(PACE[0]);
    await pause(options.rest);
  }
  const heardByThen = heard;
  const gone = new Promise<unknown>((done) =>
    killed === "tab" ? page.once("crash", done) : context.once("close", done),
  );
  const killedAt = performance.now();
  for (const pid of processes) process.kill(pid, "SIGKILL");
  await Promise.race([gone, pause(LONGEST_END)]);
  return { sent, heard: heardByThen, killedAt, context };
}

/** Processes of the browser that this context alone has. */
async function processesOf(context: BrowserContext, killed: Killed): Promise<readonly number[]> {
  const browser = context.browser();
  if (browser === null) throw new Error("killWhileTyping: the context has no browser");
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send("SystemInfo.getProcessInfo");
  const asked = killed === "tab" ? processInfo.filter(({ type }) => type === "renderer") : processInfo;
  return asked.map(({ id }) => id);
}

/** Closes a browser, or ends its processes where it does not: one whose page crashed may never answer. */
async function end(context: BrowserContext): Promise<void> {
  const processes = await processesOf(context, "browser");
  const isClosed = await Promise.race([
    context.close().then(() => true),
    pause(LONGEST_END).then(() => false),
  ]);
  if (isClosed) return;
  for (const pid of processes) process.kill(pid, "SIGKILL");
}

/** Sends a key without waiting for the page: whoever types does not wait either. */
function sendKey(session: CDPSession, text: string, onHeard: () => void): void {
  const sending = async () => {
    await session.send("Input.dispatchKeyEvent", { type: "keyDown", text, key: text });
    onHeard();
    await session.send("Input.dispatchKeyEvent", { type: "keyUp", key: text });
  };
  sending().catch(() => undefined); // the page is gone by then
}

/** What is in the field when the page is opened again. */
async function textAfter(context: BrowserContext, address: string): Promise<string> {
  // The process that the browser had ready for the next page may be among those that were killed: then it takes another.
  for (let tries = 0; tries < 3; tries++) {
    const text = await Promise.race([
      openedText(context, address).catch(() => null),
      pause(LONGEST_OPENING).then(() => null),
    ]);
    if (text !== null) return text;
  }
  throw new Error("killWhileTyping: the page does not open any more");
}

async function openedText(context: BrowserContext, address: string): Promise<string> {
  const page = await context.newPage();
  await page.goto(address + STATION, { waitUntil: "load" });
  return page.locator(FIELD).inputValue();
}

/** How many keys a text comes of. */
function keptOf(text: string, sent: number): number {
  // A point without a digit after it is not written back.
  for (let keys = sent; keys > 0; keys--) {
    const typed = TYPED.slice(0, keys);
    if (text === typed || (text !== "" && Number(text) === Number(typed))) return keys;
  }
  // Nothing of it: the field as it was before, or as it was emptied.
  if (text === "" || !text.startsWith("6.1")) return 0;
  throw new Error(`killWhileTyping: the field holds ${JSON.stringify(text)}, which was never typed`);
}

function pause(ms: number): Promise<void> {
  return new Promise((done) => setTimeout(done, ms));
}
