import { useRef, useState } from "react";
import { saveAs } from "./saveAs.ts";

/** One file that can be saved of a panel. */
export interface SavedFile {
  /** What it is, as the menu says it: `JSON, as the command line prints it`. */
  readonly name: string;
  readonly file: string;
  readonly type: string;
  /** What it holds; long ones are worked out beside the page, tell how far they are, and are given up by the signal. */
  readonly make: (signal: AbortSignal, onShare: (share: number) => void) => BlobPart | Promise<BlobPart>;
}

/** What is told of a file that is made: how far it is, that it is saved, or why it is not. */
export interface SavingTold {
  readonly text: string;
  readonly isBusy: boolean;
  /** 0 … 1; null = it does not tell. */
  readonly share: number | null;
}

export interface Saving {
  readonly told: SavingTold | null;
  readonly save: (one: SavedFile) => Promise<void>;
  /** Tells what came of something saved in another way. */
  readonly tell: (text: string) => void;
  /** Gives up what is being made, and puts away what is told. */
  readonly putAway: () => void;
}

const SAVED = "Saved";

/** Files asked for in one go: the one that is made, those that wait, what came of those before. */
interface Batch {
  readonly giveUp: AbortController;
  readonly waiting: SavedFile[];
  readonly came: string[];
}

/** Makes one file at a time and hands it over; another one waits for its turn. */
export function useSaving(): Saving {
  const underWay = useRef<Batch>(null);
  const [told, setTold] = useState<SavingTold | null>(null);
  const tell = (text: string) => setTold({ text, isBusy: false, share: null });
  const save = async (one: SavedFile) => {
    if (underWay.current) {
      underWay.current.waiting.push(one);
      return setTold((was) => was && { ...was });
    }
    const batch: Batch = { giveUp: new AbortController(), waiting: [one], came: [] };
    underWay.current = batch;
    const { signal } = batch.giveUp;
    for (let next = batch.waiting.shift(); next && !signal.aborted; next = batch.waiting.shift())
      batch.came.push(await madeOne(next, batch, setTold));
    if (signal.aborted) return;
    underWay.current = null;
    const failed = batch.came.filter((text) => !text.startsWith(SAVED));
    const saved = batch.came.length - failed.length;
    tell(saved < 3 ? batch.came.join(" ") : [`${saved} files saved.`, ...failed].join(" "));
  };
  const putAway = () => {
    underWay.current?.giveUp.abort();
    underWay.current = null;
    setTold(null);
  };
  const waiting = underWay.current?.waiting.length ?? 0;
  const isBusy = told?.isBusy === true && waiting > 0;
  return {
    told: isBusy ? { ...told, text: `${told.text} ${waiting} more after it.` } : told,
    save,
    tell,
    putAway,
  };
}

/** Makes a file and hands it over, unless it is given up; what came of it, as told. */
async function madeOne(
  { name, file, type, make }: SavedFile,
  { giveUp: { signal } }: Batch,
  setTold: (told: SavingTold) => void,
): Promise<string> {
  const tell = (share: number | null) => {
    if (!signal.aborted) setTold({ text: `Making ${name}…`, isBusy: true, share });
  };
  tell(null);
  try {
    const made = await make(signal, tell);
    if (!signal.aborted) saveAs(file, type, made);
    return `${SAVED} ${file}.`;
  } catch (fault) {
    return `${file} is not saved: ${fault instanceof Error ? fault.message : String(fault)}.`;
  }
}
