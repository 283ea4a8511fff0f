import { useId } from "react";

export type WaySwitchProps<Way extends string> = {
  label: string;
  ways: readonly { readonly way: Way; readonly label: string }[];
  /** null = none of them. */
  way: Way | null;
  onChange: (way: Way) => void;
};

/** In which of several ways a thing is given; each has fields of its own. */
export function WaySwitch<Way extends string>({ label, ways, way, onChange }: WaySwitchProps<Way>) {
  const id = useId();
  return (
    <fieldset className="ways">
      <legend>{label}</legend>
      {ways.map(({ way: one, label: name }) => (
        <label key={one}>
          <input type="radio" name={id} value={one} checked={way === one} onChange={() => onChange(one)} />
          {name}
        </label>
      ))}
    </fieldset>
  );
}
