import { createStore } from "zustand/vanilla";

/** Whether the list of everything that can be saved is over the page. */
export const savesOpen = createStore<{ readonly isOpen: boolean }>()(() => ({ isOpen: false }));
