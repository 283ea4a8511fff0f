import { createReadStream } from "node:fs";
import { realpath, stat } from "node:fs/promises";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, sep } from "node:path";
import { pipeline } from "node:stream/promises";

const MIME_TYPES: Readonly<Record<string, string>> = {
  ".css": "text/css; charset=utf-8",
  ".csv": "text/csv; charset=utf-8",
  ".glb": "model/gltf-binary",
  ".gltf": "model/gltf+json",
  ".html": "text/html; charset=utf-8",
  ".ico": "image/x-icon",
  ".jpg": "image/jpeg",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".map": "application/json; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".obj": "model/obj",
  ".png": "image/png",
  ".stl": "model/stl",
  ".svg": "image/svg+xml; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".woff2": "font/woff2",
};

/**
 * The page may load from its own address alone and may never turn text into code. Inline styles are
 * allowed because drawings (SVG) carry them; `data:` and `blob:` are the page's own bytes.
 */
const CONTENT_SECURITY_POLICY = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "connect-src 'self' data: blob:",
  "worker-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

/** A folder being served. */
export interface StaticServer {
  /** Where it is, with a closing slash: `http://127.0.0.1:41234/`. */
  readonly address: string;
  /** Stops it and drops open connections. */
  close(): Promise<void>;
}

/**
 * Serves the files of one folder, and nothing outside it, on 127.0.0.1 (this machine alone).
 * @param folder absolute path; `/` answers with its index.html
 * @param port 0 = any free port
 * @throws Error if the folder does not exist or the port is taken
 */
export async function serveFolder(folder: string, port = 0): Promise<StaticServer> {
  const root = await realpath(folder);
  const server = createServer((request, response) => {
    answer(root, request, response).catch(() => response.destroy());
  });
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", resolve);
  });
  const { port: given } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${given}/`,
    close: () =>
      new Promise((resolve, reject) => {
        server.close((error) => (error ? reject(error) : resolve()));
        server.closeAllConnections();
      }),
  };
}

async function answer(root: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  response.setHeader("Cache-Control", "no-cache");
  response.setHeader("Content-Security-Policy", CONTENT_SECURITY_POLICY);
  response.setHeader("X-Content-Type-Options", "nosniff");
  response.setHeader("Referrer-Policy", "no-referrer");
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.setHeader("Allow", "GET, HEAD");
    refuse(response, 405, "Method not allowed");
    return;
  }
  const file = await fileFor(root, request.url ?? "/");
  if (file === undefined) {
    refuse(response, 404, "Not found");
    return;
  }
  response.writeHead(200, {
    "Content-Type": MIME_TYPES[extname(file.path).toLowerCase()] ?? "application/octet-stream",
    "Content-Length": file.size,
  });
  if (request.method === "HEAD") response.end();
  else await pipeline(createReadStream(file.path), response);
}

function refuse(response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, { "Content-Type": "text/plain; charset=utf-8" });
  response.end(`${text}\n`);
}

/** The regular file a request means, links followed; none if it is missing or outside the root. */
async function fileFor(root: string, url: string): Promise<{ path: string; size: number } | undefined> {
  try {
    const path = decodeURIComponent(url.split(/[?#]/, 1)[0] ?? "/");
    const real = await realpath(join(root, path.endsWith("/") ? `${path}index.html` : path));
    if (!real.startsWith(root.endsWith(sep) ? root : root + sep)) return undefined;
    const found = await stat(real);
    return found.isFile() ? { path: real, size: found.size } : undefined;
  } catch {
    // Missing, unreadable, malformed escape or a zero byte in the path: to the one asking, all the same.
    return undefined;
  }
}
