import "./shopWheels.css";
import { useEffect, useRef, useState } from "react";
import type { LengthUnit, Setup } from "../../../setup/types/types.ts";
import { addFit, type FitFaults, type FitNaming, type TypedFit } from "../../../studies/chart/addFit.ts";
import { addFits } from "../../../studies/chart/addFits.ts";
import { type Fit, fitsList, readFits, withoutLine } from "../../../studies/chart/readFits.ts";
import { wheelText } from "../../../studies/wording/sheetRows.ts";
import { pastedText } from "../../../studies/wording/shopWords.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import { saveAs } from "../../parts/saveAs.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { AddWheel } from "./AddWheel.tsx";
import { ListedWheels } from "./ListedWheels.tsx";
import { type TriedOn, useShopWheels } from "./shopWheels.ts";
import { changeSheetFields } from "./useSheetFields.ts";

export type ShopWheelsProps = {
  truck: Truck | null;
  triedOn: readonly TriedOn[];
  /** Another each time one is to be added: then the first field has the cursor. null = it stands here by itself. */
  asked: object | null;
  onPut: (on: TriedOn, fit: Fit) => void;
  /** Closes it. Default it stays. */
  onClose?: (() => void) | undefined;
};

/** Characters. A list of thousands of wheels has fewer. */
const LONGEST = 500_000;

/**
 * Wheels and tires the shop has, to be put on a truck: those of the list, one more typed, a list opened, saved or forgotten. The list
 * stays in this browser.
 */
export function ShopWheels({ truck, triedOn, asked, onPut, onClose }: ShopWheelsProps) {
  const [told, setTold] = useState<{ readonly text: string; readonly isTrouble: boolean } | null>(null);
  // The list as it was before something was taken off.
  const [before, setBefore] = useState<string | null>(null);
  const [last, setLast] = useState<{ readonly name: string } | null>(null);
  // With a list that is long enough it is chosen from; a first line is typed.
  const [isAdding, setAdding] = useState(false);
  const { text: wheels, subject, read } = useShopWheels(truck);
  const format = useFormat();
  const title = useRef<HTMLHeadingElement>(null);
  const back = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // The button that was pressed is gone.
    if (before !== null) back.current?.focus();
  }, [before]);
  if (!subject) return null;
  const fits = read?.ok ? read.value : [];
  const takeOff = (list: string, said: string) => {
    changeSheetFields({ wheels: list });
    setBefore(wheels);
    setTold({ text: said, isTrouble: false });
  };
  const putBack = () => {
    changeSheetFields({ wheels: before! });
    setBefore(null);
    setTold({ text: "The list is as it was.", isTrouble: false });
    title.current?.focus();
  };
  const take = async (file: File) => {
    const text = file.size > LONGEST ? null : await file.text().catch(() => null);
    if (text === null) {
      setTold({ text: `${file.name} is too long for a list of wheels, or cannot be read`, isTrouble: true });
      return;
    }
    const found = readFits(text, { ...subject, file: file.name });
    const said = found.ok ? `${found.value.length} read.` : found.issues[0]!.mend;
    setTold({ text: `${file.name}: ${said}`, isTrouble: !found.ok });
    setBefore(null);
    if (found.ok) changeSheetFields({ wheels: text });
  };
  const naming: FitNaming = (fit) => wheelText(fit, format);
  const added = (list: string, said: string, isTrouble = false) => {
    if (list !== wheels) setBefore(null);
    setAdding(true);
    changeSheetFields({ wheels: list });
    setTold({ text: said, isTrouble });
  };
  const add = (typed: TypedFit): FitFaults => {
    const longer = addFit(wheels, typed, format.units, subject, naming);
    if (!longer.ok) return longer.faults;
    added(longer.list, `${longer.name}: in the list.`);
    setLast({ name: longer.name });
    return {};
  };
  const paste = (text: string, by: TypedFit["by"]) => {
    const longer = addFits(wheels, text, by, format.units, subject, naming);
    added(longer.list, pastedText(longer), longer.faults.length > 0);
  };
  return (
    <section className="shop-wheels" aria-label="Other wheels">
      <h3 ref={title} tabIndex={-1}>
        Other wheels{read?.ok ? `: ${fits.length} in the shop’s list` : ""}
      </h3>
      {read && !read.ok && (
        <p className="shop-wheels-trouble">The list cannot be read for this truck: {read.issues[0]!.mend}.</p>
      )}
      {isAdding || asked !== null || wheels === "" ? (
        <AddWheel
          own={ownFit(subject.setup, format.units)}
          units={format.units}
          asked={asked ?? (isAdding ? ADDING : null)}
          onAdd={add}
          onPaste={paste}
        />
      ) : (
        <button type="button" className="button" onClick={() => setAdding(true)}>
          Add a wheel…
        </button>
      )}
      <p
        id="shop-wheels-told"
        role="status"
        className={told?.isTrouble ? "shop-wheels-trouble" : "shop-wheels-told"}
      >
        {told?.text}
      </p>
      {fits.length > 0 && (
        <ListedWheels
          fits={fits}
          setup={subject.setup}
          triedOn={triedOn}
          added={last}
          onPut={onPut}
          onRemove={(at) => takeOff(withoutLine(wheels, at), `${fits[at]!.name}: off the list.`)}
        />
      )}
      <span className="row-tools">
        {before !== null && (
          <button ref={back} type="button" className="button" onClick={putBack}>
            Put it back
          </button>
        )}
        <label className="button shop-wheels-open">
          {wheels === "" ? "Open a list (CSV)…" : "Open another list (CSV)…"}
          <input
            type="file"
            className="sr-only"
            accept=".csv,.tsv,.txt,text/csv"
            aria-describedby="shop-wheels-told"
            onChange={(event) => {
              const [file] = event.target.files ?? [];
              event.target.value = "";
              if (file) void take(file);
            }}
          />
        </label>
        <button
          type="button"
          className="button"
          onClick={() =>
            saveAs("wheels.csv", "text/csv", wheels === "" ? fitsList(subject.document) : wheels)
          }
        >
          {wheels === "" ? "Save one to fill in" : "Save the list"}
        </button>
        {wheels !== "" && (
          <button type="button" className="button" onClick={() => takeOff("", "The list is forgotten.")}>
            Forget the list
          </button>
        )}
        {onClose && (
          <button type="button" className="button shop-wheels-done" onClick={onClose}>
            Done
          </button>
        )}
      </span>
    </section>
  );
}

/** The form was asked for by its button. */
const ADDING = {};

/** The truck's own tire, where it is told by its size, and its rim's width, as they are typed. */
function ownFit({ tire, wheel }: Setup, units: LengthUnit): Pick<TypedFit, "size" | "rimWidth"> {
  return {
    size: tire.kind === "size" ? tire.size : "",
    rimWidth: plainLengthText(wheel.rimWidth, units),
  };
}
