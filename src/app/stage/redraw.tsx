import { useThree } from "@react-three/fiber";
import { useEffect } from "react";
import { setConsoleFunction } from "three";

/** Draws again when the browser gives back a drawing context that it had taken away; nothing else would ask for a frame. */
export function RedrawOnRestore() {
  const canvas = useThree((s) => s.gl.domElement);
  const invalidate = useThree((s) => s.invalidate);
  useEffect(() => {
    const redraw = () => invalidate();
    canvas.addEventListener("webglcontextrestored", redraw);
    return () => canvas.removeEventListener("webglcontextrestored", redraw);
  }, [canvas, invalidate]);
  return null;
}

/** What three.js says of its own clock each time React Three Fiber, up to 9.8, makes a canvas: it still uses that one. */
const CLOCK = "THREE.Clock: This module has been deprecated. Please use THREE.Timer instead.";

/** Keeps that one message off the console, where nobody at the page can do anything about it; every other one is passed on. */
export function quietClock(): void {
  setConsoleFunction((type, message, ...rest) => {
    if (message !== CLOCK) console[type](message, ...rest);
  });
}
