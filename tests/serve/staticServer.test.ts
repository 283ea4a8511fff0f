import { mkdtempSync, symlinkSync, writeFileSync } from "node:fs";
import { mkdir, rm } from "node:fs/promises";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type StaticServer, serveFolder } from "../../src/serve/staticServer.ts";

/** Asks for a path exactly as written; `fetch` would tidy `..` away before it is sent. */
function ask(server: StaticServer, path: string, method = "GET") {
  return new Promise<{ status: number; headers: Record<string, unknown>; body: string }>(
    (resolve, reject) => {
      const { hostname, port } = new URL(server.address);
      const sent = request({ hostname, port, path, method }, (response) => {
        let body = "";
        response.setEncoding("utf8");
        response.on("data", (piece: string) => {
          body += piece;
        });
        response.on("end", () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
        );
      });
      sent.on("error", reject);
      sent.end();
    },
  );
}

describe("serveFolder", () => {
  const outside = mkdtempSync(join(tmpdir(), "wellsweep-serve-"));
  const folder = join(outside, "app");
  let server: StaticServer;

  beforeAll(async () => {
    await mkdir(join(folder, "assets"), { recursive: true });
    await mkdir(join(outside, "app-secret"));
    writeFileSync(join(outside, "secret.txt"), "secret");
    writeFileSync(join(outside, "app-secret", "secret.txt"), "secret");
    writeFileSync(join(folder, "index.html"), "<!doctype html><title>page</title>");
    for (const name of ["a.js", "a.css", "a.json", "a.wasm", "a.webmanifest", "a.svg", "a b.unknown"]) {
      writeFileSync(join(folder, "assets", name), name);
    }
    symlinkSync(join(outside, "secret.txt"), join(folder, "link.txt"));
    server = await serveFolder(folder);
  });
  afterAll(async () => {
    await server.close();
    await rm(outside, { recursive: true });
  });

  it.each([
    ["/", "text/html; charset=utf-8"],
    ["/index.html?v=1", "text/html; charset=utf-8"],
    ["/assets/a.js", "text/javascript; charset=utf-8"],
    ["/assets/a.css", "text/css; charset=utf-8"],
    ["/assets/a.json", "application/json; charset=utf-8"],
    ["/assets/a.wasm", "application/wasm"],
    ["/assets/a.webmanifest", "application/manifest+json; charset=utf-8"],
    ["/assets/a.svg", "image/svg+xml; charset=utf-8"],
    ["/assets/a%20b.unknown", "application/octet-stream"],
  ])("answers %s as %s", async (path, type) => {
    const answer = await ask(server, path);
    expect(answer.status).toBe(200);
    expect(answer.headers["content-type"]).toBe(type);
    expect(answer.headers["content-length"]).toBe(String(answer.body.length));
    expect(answer.headers["cache-control"]).toBe("no-cache");
  });

  it.each([
    "/../secret.txt",
    "/assets/../../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/../app-secret/secret.txt",
    "/..%5csecret.txt",
    "//secret.txt",
    "/link.txt",
    "/assets",
    "/assets/",
    "/missing.js",
    "/a%00.js",
    "/%E0%A4%A",
  ])("has nothing at %s", async (path) => {
    const answer = await ask(server, path);
    expect(answer.status).toBe(404);
    expect(answer.body).toBe("Not found\n");
  });

  it("lets the page load from its own address alone and never evaluate text", async () => {
    const policy = String((await ask(server, "/")).headers["content-security-policy"]);
    expect(policy).toContain("default-src 'self'");
    expect(policy).not.toContain("eval");
    expect(policy).not.toMatch(/https?:|\*/);
  });

  it("sends no body for HEAD and takes no other method", async () => {
    const head = await ask(server, "/assets/a.js", "HEAD");
    expect([head.status, head.body, head.headers["content-length"]]).toEqual([200, "", "4"]);
    expect((await ask(server, "/", "POST")).status).toBe(405);
  });

  it("refuses a folder that does not exist", async () => {
    await expect(serveFolder(join(outside, "nowhere"))).rejects.toThrow("nowhere");
  });
});
