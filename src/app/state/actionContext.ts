import type { WorkbenchActions } from "./workbenchActions.ts";
import type { WorkbenchState } from "./workbenchState.ts";

/** All that the page's store holds. */
export type Workbench = WorkbenchState & WorkbenchActions;

/** What actions are made with. */
export interface ActionContext {
  readonly set: (change: Partial<WorkbenchState> | ((state: Workbench) => Partial<WorkbenchState>)) => void;
  readonly get: () => Workbench;
}
