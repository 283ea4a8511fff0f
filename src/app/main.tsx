import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "./theme/tokens.css";
import "./theme/base.css";
import { App } from "./App.tsx";
import { runChecks } from "./state/runChecks.ts";
import { workbench } from "./state/workbench.ts";
import { workerChecker } from "./state/workerChecker.ts";

runChecks(workbench, workerChecker());

const root = document.getElementById("root");
if (!root) throw new Error("main: the page has no #root to put the workbench in");
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
