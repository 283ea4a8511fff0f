/// <reference lib="webworker" />
import { readMesh } from "../../files/readMesh.ts";
import type { MeshQuestion } from "./meshMessages.ts";

// Millions of triangles take seconds: here they hold up nobody. The arrays are handed over, not copied.
addEventListener("message", ({ data }: MessageEvent<MeshQuestion>) => {
  const read = readMesh(new Uint8Array(data.bytes), data.name);
  const handed = read.ok ? [read.mesh.positions.buffer, read.mesh.triangles.buffer] : [];
  postMessage(read, handed as Transferable[]);
});
