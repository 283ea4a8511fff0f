/** Whether this browser can draw the stage: whether it gives a WebGL 2 context. */
export function canDraw(): boolean {
  const gl = document.createElement("canvas").getContext("webgl2");
  // Browsers allow few contexts at once; this one was only a question.
  gl?.getExtension("WEBGL_lose_context")?.loseContext();
  return gl !== null;
}
