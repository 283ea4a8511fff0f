import { setConsoleFunction } from "three";

/** What three.js says of its own clock each time React Three Fiber, up to 9.8, makes a canvas: it still uses that one. */
const CLOCK = "THREE.Clock: This module has been deprecated. Please use THREE.Timer instead.";

/** Keeps that one message off the console, where nobody at the page can do anything about it; every other one is passed on. */
export function quietClock(): void {
  setConsoleFunction((type, message, ...rest) => {
    if (message !== CLOCK) console[type](message, ...rest);
  });
}
