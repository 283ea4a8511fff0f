/// <reference lib="webworker" />
import { answerCheck } from "./answerCheck.ts";
import type { CheckRequest } from "./checkMessages.ts";

// The check over the whole range takes a tenth of a second or more: here it holds up no drag.
addEventListener("message", (event: MessageEvent<CheckRequest>) => postMessage(answerCheck(event.data)));
