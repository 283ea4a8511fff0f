import { documentText } from "../../../setup/documentText.ts";
import { commitTyped } from "../../state/typing.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";

/** The part of the File System Access API that is used, where a browser has it. */
interface SaveFilePicker {
  showSaveFilePicker(options: {
    readonly suggestedName: string;
    readonly types: readonly { readonly description: string; readonly accept: Record<string, string[]> }[];
  }): Promise<FileSystemFileHandle>;
}

/** `cancelled`: the person closed the dialog. */
export type Saved = "saved" | "cancelled" | "failed";

/**
 * Saves the setup on the board to a file: where the person picks, or as a download where the browser has no such dialog.
 * Drafts are no part of it. From then on the board counts as saved, until it is edited again.
 */
export async function saveFile(store: WorkbenchStore): Promise<Saved> {
  commitTyped();
  const { document, file } = store.getState();
  if (document === null) return "failed";
  const text = documentText(document);
  const name = /\.json$/i.test(file) ? file : `${file || "setup"}.json`;
  let savedAs = name;
  if ("showSaveFilePicker" in window) {
    try {
      const handle = await (window as unknown as SaveFilePicker).showSaveFilePicker({
        suggestedName: name,
        types: [{ description: "Setup", accept: { "application/json": [".json"] } }],
      });
      const stream = await handle.createWritable();
      await stream.write(text);
      await stream.close();
      savedAs = handle.name;
    } catch (error) {
      return error instanceof DOMException && error.name === "AbortError" ? "cancelled" : "failed";
    }
  } else download(text, name);
  store.getState().markSaved(document, savedAs);
  return "saved";
}

function download(text: string, name: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The download has taken its own hold of it by the next turn.
  setTimeout(() => URL.revokeObjectURL(url));
}
