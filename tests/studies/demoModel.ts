import { readFileSync } from "node:fs";
import { mergePatch } from "../../src/setup/reading/mergePatch.ts";
import { resolveSetup } from "../../src/setup/resolveSetup.ts";
import { type Model, modelOf } from "../../src/studies/model/model.ts";

const DEMO = new URL("../../shared/half-ton-on-air.json", import.meta.url);

/**
 * The demo truck's file as an object, without its moving parts (most tests are about what is bolted to the body), with
 * a merge patch applied (RFC 7396), which may bring some. A fresh copy each call.
 */
export function demoDocument(patch: Record<string, unknown> = {}): Record<string, unknown> {
  const { hardware: _, ...demo } = JSON.parse(readFileSync(DEMO, "utf8"));
  const patched = mergePatch(demo, patch);
  if (!patched.ok) throw new Error(`demoDocument: refused key ${patched.key}`);
  return patched.value as Record<string, unknown>;
}

/** The demo truck's moving parts, as its file has them. */
export function movingParts(): Record<string, unknown> {
  return JSON.parse(readFileSync(DEMO, "utf8")).hardware;
}

/** The demo truck put together, with a merge patch applied. */
export function demoModel(patch: Record<string, unknown> = {}, variant: string | null = null): Model {
  const setup = resolveSetup(demoDocument(patch), "demo.json", variant);
  if (!setup.ok) throw new Error(setup.issues.map((issue) => `${issue.key}: ${issue.mend}`).join("\n"));
  const built = modelOf(setup.value, "demo.json");
  if (!built.ok) throw new Error(built.issues.map((issue) => `${issue.key}: ${issue.mend}`).join("\n"));
  return built.value;
}

/** The demo truck's fender lip alone: the part that decides, and quick to search. */
export function lipAlone(): { truck: { body: unknown[] } } {
  const { truck } = demoDocument() as { truck: { body: { name: string }[] } };
  return { truck: { body: truck.body.filter((part) => part.name === "fender lip") } };
}
