/// <reference lib="webworker" />
import { answerCounter } from "./answerCounter.ts";
import type { CounterRequest } from "./counterMessages.ts";

addEventListener("message", ({ data }: MessageEvent<CounterRequest>) =>
  answerCounter(data, (answer) => postMessage(answer)),
);
