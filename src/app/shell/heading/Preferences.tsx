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
  ["auto", "as the system"],
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
    <Menu label="Units, look">
      {() => (
        <div className="menu-form">
          <label>
            Lengths
            <select value={lengths} onChange={(event) => setLengths(event.target.value as LengthDisplay)}>
              {LENGTHS.map(([value, name]) => (
                <option key={value} value={value}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <label>
            Page
            <select value={theme} onChange={(event) => setTheme(event.target.value as Theme)}>
              {THEMES.map(([value, name]) => (
                <option key={value} value={value}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <label>
            Picture
            <select value={picture} onChange={(event) => setPicture(event.target.value as PictureStyle)}>
              {PICTURES.map(([value, name]) => (
                <option key={value} value={value}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        </div>
      )}
    </Menu>
  );
}
