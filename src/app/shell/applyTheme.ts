import type { WorkbenchStore } from "../state/workbenchStore.ts";

/**
 * Writes the chosen theme on the page's root, as `data-theme` (light or dark; none for auto): what that looks like say the tokens.
 * @returns stops following the store
 */
export function applyTheme(store: WorkbenchStore, root: HTMLElement): () => void {
  const apply = () => {
    const { theme } = store.getState().preferences;
    if (theme === "auto") delete root.dataset.theme;
    else root.dataset.theme = theme;
  };
  apply();
  return store.subscribe((state, before) => {
    if (state.preferences.theme !== before.preferences.theme) apply();
  });
}
