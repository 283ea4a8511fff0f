import { Menu } from "../../parts/Menu.tsx";
import type { LengthDisplay, PictureStyle, Theme } from "../../state/preferences.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

const LENGTHS: readonly (readonly [LengthDisplay, string])[] = [
  ["file", "units of the file"],
  ["1/16", "inches, 1/16"],
  ["1/32", "inches, 1/32"],
  ["1/64", "inches, 1/64"],
  ["decimal", "inches, decimal"],
  ["mm", "millimeters"],
];

const THEMES: readonly (readonly [Theme, string])[] = [
  ["auto", "same as the system"],
  ["light", "light"],
  ["dark", "dark"],
];

const PICTURES: readonly (readonly [PictureStyle, string])[] = [
  ["truck", "rubber and metal"],
  ["lines", "line drawing"],
];

/** How lengths are shown and how the page looks; no setup changes with either. */
export function Preferences() {
  const { lengths, theme, picture } = useWorkbench((s) => s.preferences);
  const setLengths = useWorkbench((s) => s.setLengths);
  const setTheme = useWorkbench((s) => s.setTheme);
  const setPicture = useWorkbench((s) => s.setPicture);
  return (
    <Menu
      label="Units, look"
      icon={
        <>
          Units<span className="heading-roomy">, look</span>
        </>
      }
    >
      {() => (
        <div className="menu-form">
          <Preference label="Lengths" of={LENGTHS} now={lengths} onChoose={setLengths} />
          <Preference label="Page" of={THEMES} now={theme} onChoose={setTheme} />
          <Preference label="Picture" of={PICTURES} now={picture} onChoose={setPicture} />
        </div>
      )}
    </Menu>
  );
}

type PreferenceProps<T> = {
  label: string;
  /** Each value with its name. */
  of: readonly (readonly [T, string])[];
  now: T;
  onChoose: (value: T) => void;
};

function Preference<T extends string>({ label, of, now, onChoose }: PreferenceProps<T>) {
  return (
    <label>
      {label}
      <select value={now} onChange={(event) => onChoose(event.target.value as T)}>
        {of.map(([value, name]) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
