import { meshJobs } from "./bench/meshJobs.ts";
import { measure } from "./bench/measure.ts";
import { printTimings } from "./bench/printTimings.ts";
printTimings(meshJobs().map(measure));
