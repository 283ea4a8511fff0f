/// <reference lib="webworker" />
import { answererOf, type WorkRequest } from "./answerer.ts";

// What takes a tenth of a second or more is done here, where it holds up no drag.
const answer = answererOf((reply, handOver) => postMessage(reply, handOver as Transferable[]));
addEventListener("message", ({ data }: MessageEvent<WorkRequest>) => answer(data));
