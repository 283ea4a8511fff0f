import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "./theme/tokens.css";
import "./theme/base.css";
import { askFirst, firstAnswer } from "./clear/firstAnswer.ts";
import { App } from "./shell/App.tsx";
import { applyTheme } from "./shell/applyTheme.ts";
import { startOffline } from "./shell/offline/offline.ts";
import { OpeningLink } from "./shell/share/OpeningLink.tsx";
import { openSharedLink } from "./shell/share/openSharedLink.ts";
import { isPackingReady } from "./shell/share/packedText.ts";
import { saveFile } from "./shell/share/saveFile.ts";
import { isShareLink, readShareLink } from "./shell/share/shareLink.ts";
import { shortcutKeys } from "./shell/shortcutKeys.ts";
import { startStorage } from "./shell/storage/pageStorage.ts";
import { hashOf, tellAddress } from "./state/address.ts";
import { followPointers } from "./state/pointerHeld.ts";
import { workbench } from "./state/workbench.ts";
import { work } from "./work/work.ts";

const root = document.getElementById("root");
if (!root) throw new Error("main: the page has no #root to put the workbench in");

const page = createRoot(root);

/** ms. What comes sooner is not announced. */
const SOON = 400;

/**
 * A link's setup is put on the board once; then the hash goes, or a reload would put it over what was done to it. One that cannot be
 * read yet stays in its place of the history, marked: who goes back there is told so again, and keeps what is on the board.
 */
async function openLink(isLeft = false): Promise<void> {
  const { hash } = location;
  // Somebody may have gone elsewhere meanwhile.
  const isAsked = () => location.hash === hash;
  const read = isLeft ? (text: string) => readShareLink(text, async () => false) : readShareLink;
  const address = await openSharedLink(workbench, hash, read, isAsked);
  if (address !== null) {
    history.replaceState(null, "", hashOf(address));
    tellAddress();
  } else if (isShareLink(hash) && isAsked()) history.replaceState({ isUnreadLink: true }, "");
}

/** Whether the place in the history that somebody came back to is that of a link which could not be read. */
function isAtUnread(): boolean {
  return typeof history.state === "object" && history.state !== null && "isUnreadLink" in history.state;
}

/** ms. A page that never rests is kept all the same. */
const KEPT_AFTER = 10_000;

/** Nothing more is to be put on the page for now: the picture, which comes after the first answer, is there. */
function pageAtRest(): Promise<void> {
  return new Promise((done) => {
    // Not every browser tells of its rest.
    if ("requestIdleCallback" in window) requestIdleCallback(() => done(), { timeout: KEPT_AFTER });
    else setTimeout(done, KEPT_AFTER / 4);
  });
}

work.start();
applyTheme(workbench, document.documentElement);
followPointers(window);
const isLinked = isShareLink(location.hash);
// What it takes is fetched while the storage answers.
if (isLinked) void isPackingReady();
// Until the link is open no other truck is shown in its place, nor a page left blank.
const announced = isLinked ? setTimeout(() => page.render(<OpeningLink />), SOON) : undefined;
await startStorage();
addEventListener("hashchange", () => void openLink(isAtUnread()));
await openLink();
clearTimeout(announced);
shortcutKeys(workbench, window, () => void saveFile(workbench));
askFirst();
page.render(
  <StrictMode>
    <App />
  </StrictMode>,
);
// Fetching every file to keep takes as long as coming up: after all that somebody waits for.
void firstAnswer().then(pageAtRest).then(startOffline);
