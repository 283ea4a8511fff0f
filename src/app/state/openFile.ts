import { MAX_FILE_CHARACTERS } from "../../setup/limits.ts";
import type { WorkbenchStore } from "./workbenchStore.ts";

/** Reads a file that a person picked or dropped, and opens it; one that cannot be read is refused with its reason. */
export async function openFile(store: WorkbenchStore, file: File): Promise<void> {
  const { openText, refuse } = store.getState();
  // UTF-8 takes at most 3 bytes for each UTF-16 character: more bytes than that is more characters than allowed.
  if (file.size > 3 * MAX_FILE_CHARACTERS) {
    refuse({
      file: file.name,
      key: "",
      value: `${file.size} bytes`,
      mend: "this is too large to be a setup; pick a setup file",
    });
    return;
  }
  try {
    openText(await file.text(), file.name);
  } catch {
    refuse({
      file: file.name,
      key: "",
      value: "",
      mend: "the file could not be read; check that it is still there and is a file, not a folder",
    });
  }
}
