import { useThree } from "@react-three/fiber";
import { useEffect } from "react";

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
