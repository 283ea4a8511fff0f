import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "./theme/tokens.css";
import "./theme/base.css";
import { App } from "./shell/App.tsx";
import { applyTheme } from "./shell/applyTheme.ts";
import { startOffline } from "./shell/offline/offline.ts";
import { openSharedLink } from "./shell/share/openSharedLink.ts";
import { saveFile } from "./shell/share/saveFile.ts";
import { shortcutKeys } from "./shell/shortcutKeys.ts";
import { startStorage } from "./shell/storage/pageStorage.ts";
import { hashOf, tellAddress } from "./state/address.ts";
import { workbench } from "./state/workbench.ts";
import { work } from "./work/work.ts";

const root = document.getElementById("root");
if (!root) throw new Error("main: the page has no #root to put the workbench in");

/** A link's setup is put on the board once; then the hash goes, or a reload would put it over what was done to it. */
async function openLink(): Promise<void> {
  const address = await openSharedLink(workbench, location.hash);
  if (address === null) return;
  history.replaceState(history.state, "", hashOf(address));
  tellAddress();
}

work.start();
applyTheme(workbench, document.documentElement);
await startStorage();
await openLink();
addEventListener("hashchange", () => void openLink());
shortcutKeys(workbench, window, () => void saveFile(workbench));
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
void startOffline();
