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
import { createStore } from "zustand/vanilla";
import type { FitFaults, TypedFit } from "../../../studies/chart/addFit.ts";
import { PASTE_HINT } from "../../../studies/wording/shopWords.ts";

/** null = nothing yet: then it is the truck's own. */
type Typed = Omit<TypedFit, "size" | "rimWidth"> & Record<"size" | "rimWidth", string | null>;

/** What is typed of a wheel to be added, wherever the form stands; as long as the page. */
const typedFit = createStore<Typed>()(() => ({
  size: null,
  rimWidth: null,
  by: "backspacing",
  at: "",
  name: "",
}));

export type AddWheelProps = {
  /** The truck's own: most wheels that are asked about take the tire there is, or a rim as wide. */
  own: Pick<TypedFit, "size" | "rimWidth">;
  units: string;
  /** Another each time it was asked for: then the first field has the cursor. null = it stands here by itself. */
  asked: object | null;
  /** @returns what keeps it from being added; none = it is */
  onAdd: (typed: TypedFit) => FitFaults;
  /** Several lines that were pasted. */
  onPaste: (text: string) => void;
};

/** One wheel and tire, typed; Enter adds it and begins the next. Lines that are pasted into any field are wheels. */
export function AddWheel({ own, units, asked, onAdd, onPaste }: AddWheelProps) {
  const held = useStore(typedFit);
  const typed: TypedFit = {
    ...held,
    size: held.size ?? own.size,
    rimWidth: held.rimWidth ?? own.rimWidth,
  };
  const [faults, setFaults] = useState<FitFaults>({});
  const first = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (asked !== null) first.current?.select();
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
    if (Object.keys(found).length > 0) return;
    // The next is often of the same tire and rim width.
    change({ size: typed.size, rimWidth: typed.rimWidth, at: "", name: "" });
    first.current?.select();
  };
  const takeLines = (event: ClipboardEvent) => {
    const text = event.clipboardData.getData("text");
    if (!text.trim().includes("\n")) return;
    event.preventDefault();
    onPaste(text);
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
      <Field label={`${typed.by === "offset" ? "Offset" : "Backspacing"}, ${units}`} {...input("at")}>
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
        Add to the list
      </button>
      <p className="add-wheel-hint">{PASTE_HINT}</p>
      {faults.list !== undefined && (
        <p role="alert" className="shop-wheels-trouble">
          The list takes no line more: {faults.list}.
        </p>
      )}
    </form>
  );
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
