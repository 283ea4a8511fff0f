import "./shopWheels.css";
import { type FormEvent, type ReactNode, useEffect, useId, useRef, useState } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { FitFaults, TypedFit } from "../../../studies/chart/addFit.ts";

const EMPTY: TypedFit = { size: "", rimWidth: "", by: "backspacing", at: "", name: "" };

/** What is typed of a wheel to be added, wherever the form stands; as long as the page. */
const typedFit = createStore<TypedFit>()(() => EMPTY);

export type AddWheelProps = {
  /** On which of the two it goes. */
  letter: "A" | "B";
  units: string;
  /** Another each time it was asked for: then the first field has the cursor. null = it stands here by itself. */
  asked: object | null;
  /** @returns what keeps it from being added; none = it is */
  onAdd: (typed: TypedFit) => FitFaults;
};

/** One wheel and tire, typed. */
export function AddWheel({ letter, units, asked, onAdd }: AddWheelProps) {
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
