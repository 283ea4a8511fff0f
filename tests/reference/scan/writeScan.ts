import { writeFileSync } from "node:fs";
import { BENT_FENDER, scannedFenderStl } from "./scannedFender.ts";

for (const [name, options] of [
  ["scanned-fender.stl", {}],
  ["worked/bent-fender.stl", BENT_FENDER],
] as const) {
  const file = new URL(`../../../shared/${name}`, import.meta.url);
  const bytes = scannedFenderStl(options);
  writeFileSync(file, bytes);
  console.log(`wrote ${file.pathname}: ${(bytes.length - 84) / 50} triangles, ${bytes.length} bytes`);
}
