/** When the rims of what is drawn are smooth. */
export type Rims = "always" | "at rest" | "never";

declare global {
  /** Set before the page comes up by who measures or compares pictures; otherwise the page decides. */
  var wellsweepRims: Rims | undefined;
}

/** Names that drawing by the processor goes by, where there is no graphics card or it may not be used. */
const BY_PROCESSOR = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** undefined = not asked yet. */
let known: Rims | null | undefined;

/** What `drawing` found; undefined before it was asked. */
export function knownDrawing(): Rims | null | undefined {
  return known;
}

/**
 * How this browser draws the stage; null where it cannot (it gives no WebGL 2 context). Drawn by the processor, rims are smooth
 * at rest alone: they take most of a frame. The browser is asked once: that takes one without a graphics card a quarter of a
 * second, and more where it has drawn nothing yet.
 */
export function drawing(): Rims | null {
  if (known === undefined) known = askBrowser();
  return known;
}

function askBrowser(): Rims | null {
  const gl = document.createElement("canvas").getContext("webgl2");
  if (gl === null) return null;
  const named = gl.getExtension("WEBGL_debug_renderer_info");
  const name = String(gl.getParameter(named?.UNMASKED_RENDERER_WEBGL ?? gl.RENDERER));
  // Browsers allow few contexts at once; this one was only a question.
  gl.getExtension("WEBGL_lose_context")?.loseContext();
  return globalThis.wellsweepRims ?? (BY_PROCESSOR.test(name) ? "at rest" : "always");
}
