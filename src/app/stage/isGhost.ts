import { createContext } from "react";

/** Whether what is drawn inside belongs to the truck that is laid beside the one shown. */
export const IsGhost = createContext(false);
