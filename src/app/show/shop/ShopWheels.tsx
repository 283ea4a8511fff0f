import "./shopWheels.css";
import { useEffect, useRef, useState } from "react";
import { addFit, type FitFaults, type TypedFit } from "../../../studies/chart/addFit.ts";
import { type Fit, fitsList, readFits, withoutLine } from "../../../studies/chart/readFits.ts";
import { wheelText } from "../../../studies/wording/sheetRows.ts";
import { truckName } from "../../../studies/wording/truckName.ts";
import { saveAs } from "../../parts/saveAs.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { AddWheel } from "./AddWheel.tsx";
import { ListedWheels } from "./ListedWheels.tsx";
import { fitName, trucksToPutOn, useShopWheels } from "./shopWheels.ts";
import { changeSheetFields } from "./useSheetFields.ts";

export type ShopWheelsProps = {
  truck: Truck | null;
  /** The setup's variants. */
  names: readonly string[];
  /** Which of the two becomes the truck with the wheel, and what that is now. */
  letter: "A" | "B";
  chosen: string | null;
  /** Another each time one is to be added: then the first field has the cursor. null = it stands here by itself. */
  asked: object | null;
  /** @param base the truck it goes on: a variant, null = the setup as it stands */
  onPut: (base: string | null, fit: Fit) => void;
  /** Closes it. Default it stays. */
  onClose?: (() => void) | undefined;
};

/** Characters. A list of thousands of wheels has fewer. */
const LONGEST = 500_000;

/**
 * Wheels and tires the shop has, to be put on a truck: those of the list, one more typed, a list opened, saved or forgotten. The list
 * stays in this browser.
 */
export function ShopWheels({ truck, names, letter, chosen, asked, onPut, onClose }: ShopWheelsProps) {
  const [told, setTold] = useState<{ readonly text: string; readonly isTrouble: boolean } | null>(null);
  // The list as it was before something was taken off.
  const [before, setBefore] = useState<string | null>(null);
  // A customer asks about the truck as it is, whatever is looked at.
  const [wanted, setBase] = useState<string | null>(null);
  const { text: wheels, subject, read } = useShopWheels(truck);
  const format = useFormat();
  const goesOn = useRef<HTMLSelectElement>(null);
  const back = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // The button that was pressed is gone.
    if (before !== null) back.current?.focus();
  }, [before]);
  if (!subject) return null;
  const fits = read?.ok ? read.value : [];
  const bases = trucksToPutOn(fits, names);
  const base = bases.includes(wanted) ? wanted : null;
  const takeOff = (list: string, said: string) => {
    changeSheetFields({ wheels: list });
    setBefore(wheels);
    setTold({ text: said, isTrouble: false });
  };
  const putBack = () => {
    changeSheetFields({ wheels: before! });
    setBefore(null);
    setTold({ text: "The list is as it was.", isTrouble: false });
    goesOn.current?.focus();
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
  const add = (typed: TypedFit): FitFaults => {
    const added = addFit(wheels, typed, format.units, subject, (fit) => wheelText(fit, format));
    if (!added.ok) return added.faults;
    setBefore(null);
    changeSheetFields({ wheels: added.list });
    const longer = readFits(added.list, subject);
    if (longer.ok) onPut(base, longer.value.at(-1)!);
    return {};
  };
  return (
    <fieldset className="shop-wheels">
      <legend className="label">Wheels the shop has{read?.ok ? `: ${fits.length}` : ""}</legend>
      <label className="shop-wheels-base">
        <span className="label">{letter} becomes this truck, with the wheel</span>
        {/* A position as value: a variant may be called anything. */}
        <select
          ref={goesOn}
          value={bases.indexOf(base)}
          onChange={(event) => setBase(bases[Number(event.target.value)] ?? null)}
        >
          {bases.map((name, i) => (
            <option key={name ?? ""} value={i}>
              {truckName(name)}
            </option>
          ))}
        </select>
      </label>
      {read && !read.ok && (
        <p className="shop-wheels-trouble">The list cannot be read for this truck: {read.issues[0]!.mend}.</p>
      )}
      {fits.length > 0 && (
        <ListedWheels
          fits={fits}
          setup={subject.setup}
          letter={letter}
          isOn={(fit) => chosen === fitName(base, fit)}
          onPut={(fit) => onPut(base, fit)}
          onRemove={(at) => takeOff(withoutLine(wheels, at), `${fits[at]!.name}: off the list.`)}
        />
      )}
      <AddWheel letter={letter} units={format.units} asked={asked} onAdd={add} />
      <label className="shop-wheels-open">
        {wheels === "" ? "Or open a list (CSV)" : "Open another list (CSV)"}
        <input
          type="file"
          accept=".csv,.tsv,.txt,text/csv"
          aria-describedby="shop-wheels-told"
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            event.target.value = "";
            if (file) void take(file);
          }}
        />
      </label>
      <p
        id="shop-wheels-told"
        role="status"
        className={told?.isTrouble ? "shop-wheels-trouble" : "shop-wheels-told"}
      >
        {told?.text}
      </p>
      <span className="row-tools">
        {before !== null && (
          <button ref={back} type="button" className="button" onClick={putBack}>
            Put it back
          </button>
        )}
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
          <button type="button" className="button" onClick={onClose}>
            Done
          </button>
        )}
      </span>
    </fieldset>
  );
}
