import "./shopWheels.css";
import {
  type ClipboardEvent,
  type FormEvent,
  type ReactNode,
  useEffect,
  useId,
  useRef,
  useState,
} from "react";
import { useStore } from "zustand";
import { type FitFaults, REQUIRED, type TypedFit } from "../../../studies/chart/addFit.ts";
import { faceMissing, pasteHint } from "../../../studies/wording/shopWords.ts";
import { filledFit, type HeldFit, nextFit, type OwnFit, typedFit } from "./typedFit.ts";

export type AddWheelProps = {
  /** The truck's own: most wheels that are asked about take the tire there is, or a rim as wide. */
  own: OwnFit;
  units: string;
  /** Another each time it was asked for: then the first field has the cursor. null = it stands here by itself. */
  asked: object | null;
  /** @returns what keeps it from being added; none = it is */
  onAdd: (typed: TypedFit) => FitFaults;
  /** Several lines that were pasted. @param by what the form tells a mounting face by */
  onPaste: (text: string, by: TypedFit["by"]) => void;
};

/** One wheel and tire, typed; Enter adds it and begins the next. Lines that are pasted into any field are wheels. */
export function AddWheel({ own, units, asked, onAdd, onPaste }: AddWheelProps) {
  const held = useStore(typedFit);
  const typed = filledFit(held, own);
  const [faults, setFaults] = useState<FitFaults>({});
  const first = useRef<HTMLInputElement>(null);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (asked === null) return;
    typeOver(first.current);
    form.current?.scrollIntoView({ block: "nearest" });
  }, [asked]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is wrong stands on the page once it is known
  useEffect(() => {
    form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [faults]);
  const change = (part: Partial<HeldFit>) => typedFit.setState(part);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const found = onAdd(typed);
    setFaults(found);
    if (Object.keys(found).length > 0) return;
    change(nextFit(typed, own));
    // On glass the keys to type with would lie over what it comes to.
    if (isOnGlass()) blurWithin(form.current);
    else typeOver(first.current);
  };
  const takeLines = (event: ClipboardEvent) => {
    const text = event.clipboardData.getData("text");
    if (!text.trim().includes("\n")) return;
    event.preventDefault();
    onPaste(text, typed.by);
  };
  const input = (key: "size" | "rimWidth" | "at" | "name") => ({
    value: typed[key],
    fault: faults[key],
    onType: (text: string) => change({ [key]: text }),
  });
  return (
    <form
      ref={form}
      className="add-wheel"
      aria-label="Add a wheel"
      onSubmit={submit}
      onPaste={takeLines}
      noValidate
    >
      <Field label="Tire size" {...input("size")} inputRef={first} />
      <Field label={`Rim width, ${units}`} {...input("rimWidth")} />
      <Field
        label={`${typed.by === "offset" ? "Offset" : "Backspacing"}, ${units}`}
        {...input("at")}
        fault={faults.at === REQUIRED ? faceMissing(typed.by) : faults.at}
      >
        <select
          aria-label="Given by"
          value={typed.by}
          onChange={(event) => change({ by: event.target.value as TypedFit["by"] })}
        >
          <option value="backspacing">backspacing</option>
          <option value="offset">offset</option>
        </select>
      </Field>
      <Field label="Name (optional)" {...input("name")} />
      <button type="submit" className="button">
        See if it clears
      </button>
      <p className="add-wheel-hint">{pasteHint(typed.by)}</p>
      {faults.list !== undefined && (
        <p role="alert" className="shop-wheels-trouble">
          The list takes no line more: {faults.list}.
        </p>
      )}
    </form>
  );
}

/** Whether keys are drawn on the screen where somebody types. */
function isOnGlass(): boolean {
  return matchMedia("(hover: none) and (pointer: coarse)").matches;
}

function blurWithin(form: HTMLElement | null): void {
  form?.querySelector<HTMLElement>(":focus")?.blur();
}

/** What is typed next goes in the place of all that stands there. Choosing it gives the cursor in some browsers alone. */
function typeOver(input: HTMLInputElement | null): void {
  input?.focus();
  input?.select();
}

type FieldProps = {
  label: string;
  value: string;
  fault: string | undefined;
  onType: (text: string) => void;
  inputRef?: React.Ref<HTMLInputElement>;
  children?: ReactNode;
};

/** One of its fields, with what is wrong below it. */
function Field({ label, value, fault, onType, inputRef, children }: FieldProps) {
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
