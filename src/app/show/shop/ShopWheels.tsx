import "./shopWheels.css";
import { type FormEvent, type ReactNode, useEffect, useId, useRef, useState } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { addFit, type FitFaults, type TypedFit } from "../../../studies/chart/addFit.ts";
import { type Fit, fitsList, readFits } from "../../../studies/chart/readFits.ts";
import { wheelText } from "../../../studies/wording/sheetRows.ts";
import { saveAs } from "../../parts/saveAs.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { useShopWheels } from "./shopWheels.ts";
import { changeSheetFields } from "./useSheetFields.ts";

export type ShopWheelsProps = {
  truck: Truck | null;
  /** On which of the two a wheel that is added goes. */
  letter: "A" | "B";
  /** Another each time it was asked for: then the first field has the cursor. null = it stands here by itself. */
  asked: object | null;
  onPut: (fit: Fit) => void;
  /** Closes it. Default it stays. */
  onClose?: (() => void) | undefined;
};

const EMPTY: TypedFit = { size: "", rimWidth: "", by: "backspacing", at: "", name: "" };

/** What is typed of a wheel to be added, wherever the form stands; as long as the page. */
const typedFit = createStore<TypedFit>()(() => EMPTY);

/** Characters. A list of thousands of wheels has fewer. */
const LONGEST = 500_000;

/** Wheels and tires the shop has: one more typed, a list opened, saved or forgotten. The list stays in this browser. */
export function ShopWheels({ truck, letter, asked, onPut, onClose }: ShopWheelsProps) {
  const [told, setTold] = useState<{ readonly text: string; readonly isTrouble: boolean } | null>(null);
  const { text: wheels, subject, read } = useShopWheels(truck);
  const format = useFormat();
  if (!subject) return null;
  const take = async (file: File) => {
    const text = file.size > LONGEST ? null : await file.text().catch(() => null);
    if (text === null) {
      setTold({ text: `${file.name} is too long for a list of wheels, or cannot be read`, isTrouble: true });
      return;
    }
    const found = readFits(text, { ...subject, file: file.name });
    const said = found.ok ? `${found.value.length} read.` : found.issues[0]!.mend;
    setTold({ text: `${file.name}: ${said}`, isTrouble: !found.ok });
    if (found.ok) changeSheetFields({ wheels: text });
  };
  const add = (typed: TypedFit): FitFaults => {
    const added = addFit(wheels, typed, format.units, subject, (fit) => wheelText(fit, format));
    if (!added.ok) return added.faults;
    changeSheetFields({ wheels: added.list });
    const fits = readFits(added.list, subject);
    if (fits.ok) onPut(fits.value.at(-1)!);
    return {};
  };
  return (
    <fieldset className="shop-wheels">
      <legend className="label">Wheels the shop has{read?.ok ? `: ${read.value.length}` : ""}</legend>
      {read && !read.ok && (
        <p className="shop-wheels-trouble">The list cannot be read for this truck: {read.issues[0]!.mend}.</p>
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
          <button type="button" className="button" onClick={() => changeSheetFields({ wheels: "" })}>
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

type AddWheelProps = Pick<ShopWheelsProps, "letter" | "asked"> & {
  units: string;
  /** @returns what keeps it from being added; none = it is */
  onAdd: (typed: TypedFit) => FitFaults;
};

/** One wheel and tire, typed. */
function AddWheel({ letter, units, asked, onAdd }: AddWheelProps) {
  const typed = useStore(typedFit);
  const [faults, setFaults] = useState<FitFaults>({});
  const first = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (asked !== null) first.current?.focus();
  }, [asked]);
  const form = useRef<HTMLFormElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is wrong stands on the page once it is known
  useEffect(() => {
    form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [faults]);
  const change = (part: Partial<TypedFit>) => typedFit.setState(part);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const found = onAdd(typed);
    setFaults(found);
    if (Object.keys(found).length === 0) typedFit.setState(EMPTY);
  };
  const input = (key: "size" | "rimWidth" | "at" | "name") => ({
    value: typed[key],
    fault: faults[key],
    onType: (text: string) => change({ [key]: text }),
  });
  return (
    <form ref={form} className="add-wheel" aria-label="Add a wheel" onSubmit={submit} noValidate>
      <Typed label="Tire size" {...input("size")} inputRef={first} />
      <Typed label={`Rim width, ${units}`} {...input("rimWidth")} />
      <Typed label={`${typed.by === "offset" ? "Offset" : "Backspacing"}, ${units}`} {...input("at")}>
        <select
          aria-label="Given by"
          value={typed.by}
          onChange={(event) => change({ by: event.target.value as TypedFit["by"] })}
        >
          <option value="backspacing">backspacing</option>
          <option value="offset">offset</option>
        </select>
      </Typed>
      <Typed label="Name (optional)" {...input("name")} />
      <button type="submit" className="button">
        Add, and put on {letter}
      </button>
      {faults.list !== undefined && (
        <p role="alert" className="shop-wheels-trouble">
          The list takes no line more: {faults.list}.
        </p>
      )}
    </form>
  );
}

type TypedProps = {
  label: string;
  value: string;
  fault: string | undefined;
  onType: (text: string) => void;
  inputRef?: React.Ref<HTMLInputElement>;
  children?: ReactNode;
};

/** One of its fields, with what is wrong below it. */
function Typed({ label, value, fault, onType, inputRef, children }: TypedProps) {
  const id = useId();
  return (
    <div className="add-wheel-field">
      <label htmlFor={id} className="label">
        {label}
      </label>
      <span>
        <input
          id={id}
          ref={inputRef}
          type="text"
          autoComplete="off"
          maxLength={80}
          value={value}
          aria-invalid={fault !== undefined}
          aria-describedby={fault === undefined ? undefined : `${id}-fault`}
          onChange={(event) => onType(event.target.value)}
        />
        {children}
      </span>
      {fault !== undefined && (
        <p id={`${id}-fault`} className="shop-wheels-trouble">
          <span aria-hidden="true">✕ </span>
          {fault.charAt(0).toUpperCase() + fault.slice(1)}.
        </p>
      )}
    </div>
  );
}
