import { writeFileSync } from "node:fs";
import { scannedFenderStl } from "./scannedFender.ts";

const file = new URL("../../../shared/scanned-fender.stl", import.meta.url);
const bytes = scannedFenderStl();
writeFileSync(file, bytes);
console.log(`wrote ${file.pathname}: ${(bytes.length - 84) / 50} triangles, ${bytes.length} bytes`);
