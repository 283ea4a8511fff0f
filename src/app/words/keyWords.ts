import { fieldLabel } from "../../setup/fields/fieldLabels.ts";

/** A key that is more than one word, with the blocks it is named in: `rimWidth`, `wheel.barrelDiameter`. */
const KEY = /\b(?:[a-z]\w*\.)*[a-z]+[A-Z]\w*\b/g;

/** A sentence with the setup file's keys put as their fields are called on the form: `rimWidth` → `rim width`. */
export function keyWords(sentence: string): string {
  return sentence.replace(KEY, (key) => {
    const label = fieldLabel(key.split("."), "");
    return label.charAt(0).toLowerCase() + label.slice(1);
  });
}

/** Keeps a length on one line: the spaces inside `27 5/16 in` and `< 1/16 in` do not break. For text that is shown, not compared. */
export function keepTogether(text: string): string {
  return text
    .replace(/(\d) (?=\d+\/\d)/g, "$1\u00a0")
    .replace(/(\d) (?=(?:in|mm)\b)/g, "$1\u00a0")
    .replace(/< (?=\d)/g, "<\u00a0");
}
