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
