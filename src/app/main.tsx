import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "./theme/tokens.css";
import "./theme/base.css";
import { App } from "./App.tsx";
import { startOffline } from "./offline/offline.ts";
import { openSharedLink } from "./share/openSharedLink.ts";
import { saveFile } from "./share/saveFile.ts";
import { applyTheme } from "./state/applyTheme.ts";
import { runChecks } from "./state/runChecks.ts";
import { shortcutKeys } from "./state/shortcutKeys.ts";
import { workbench } from "./state/workbench.ts";
import { workerChecker } from "./state/workerChecker.ts";
import { startStorage } from "./storage/pageStorage.ts";

const root = document.getElementById("root");
if (!root) throw new Error("main: the page has no #root to put the workbench in");

/** A link's setup is put on the board once; then the hash goes, or a reload would put it over what was done to it. */
async function openLink(): Promise<void> {
  if (await openSharedLink(workbench, location.hash)) {
    history.replaceState(history.state, "", location.pathname + location.search);
  }
}

applyTheme(workbench, document.documentElement);
await startStorage();
await openLink();
addEventListener("hashchange", () => void openLink());
shortcutKeys(workbench, window, () => void saveFile(workbench));
runChecks(workbench, workerChecker());
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
void startOffline();
