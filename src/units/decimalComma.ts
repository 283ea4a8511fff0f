/** Text with points for its decimal commas, or why a comma in it can't be read (one sentence without a full stop). */
export type WithPoints =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly mend: string };

/** Digits, points and commas in a row. */
const RUN = /[\d.,]*\d[\d.,]*/g;

/**
 * Takes a comma for the decimal point it is where nothing else can be meant: `383,0`, `0,125`, `,5`. Three digits after
 * it could be thousands (`1,234`), so that is refused with both readings; and so is every thousands separator.
 */
export function withDecimalPoints(text: string): WithPoints {
  if (!text.includes(",")) return { ok: true, text };
  let mend: string | null = null;
  const read = text.replace(RUN, (run) => {
    const found = readRun(run);
    if (!found.ok) mend ??= found.mend;
    return found.ok ? found.text : run;
  });
  return mend === null ? { ok: true, text: read } : { ok: false, mend };
}

function readRun(run: string): WithPoints {
  if (!run.includes(",")) return { ok: true, text: run };
  if (/^[1-9]\d{0,2},\d{3}$/.test(run)) {
    const [point, none] = [run.replace(",", "."), run.replace(",", "")];
    return { ok: false, mend: `has a comma that can be read two ways; write ${point} or ${none}` };
  }
  if (/^\d*,\d+$/.test(run)) return { ok: true, text: run.replace(",", ".") };
  const plain = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(run)
    ? run.replaceAll(",", "")
    : /^\d{1,3}(?:\.\d{3})+,\d+$/.test(run)
      ? run.replaceAll(".", "").replace(",", ".")
      : null;
  const instead = plain === null ? "a decimal point and no thousands separator" : plain;
  return { ok: false, mend: `has a comma; write ${instead}` };
}
