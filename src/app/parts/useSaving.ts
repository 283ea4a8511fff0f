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

/** Makes one file at a time and hands it over; another one gives up the one before. */
export function useSaving(): Saving {
  const underWay = useRef<AbortController | null>(null);
  const [told, setTold] = useState<SavingTold | null>(null);
  const tell = (text: string) => setTold({ text, isBusy: false, share: null });
  const save = async ({ name, file, type, make }: SavedFile) => {
    underWay.current?.abort();
    const giveUp = new AbortController();
    underWay.current = giveUp;
    const text = `Making ${name}…`;
    setTold({ text, isBusy: true, share: null });
    try {
      const made = await make(giveUp.signal, (share) => {
        if (!giveUp.signal.aborted) setTold({ text, isBusy: true, share });
      });
      if (giveUp.signal.aborted) return;
      saveAs(file, type, made);
      tell(`Saved ${file}.`);
    } catch (fault) {
      if (giveUp.signal.aborted) return;
      const why = fault instanceof Error ? fault.message : String(fault);
      tell(`Not saved: ${why}`);
    }
  };
  const putAway = () => {
    underWay.current?.abort();
    setTold(null);
  };
  return { told, save, tell, putAway };
}
