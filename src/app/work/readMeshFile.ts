import { createStore } from "zustand/vanilla";
import { type MeshResult, readMesh, tooLargeMend } from "../../files/readMesh.ts";
import type { LoadedMesh, RefusedMesh } from "../../setup/reading/blockReading.ts";
import { startWorker } from "./work.ts";
import { WorkClient } from "./workClient.ts";

/** A large mesh file that is being read. */
export interface MeshReading {
  readonly name: string;
  readonly bytes: number;
  /** Reads it no further; it is then a file that could not be read. */
  readonly stop: () => void;
}

/** Large mesh files being read now, in the order they were given. */
export const meshReadings = createStore<{ readonly under: readonly MeshReading[] }>()(() => ({ under: [] }));

export const UNREADABLE =
  "the file could not be read; check that it is still there and is a file, not a folder";

/** Bytes. What is smaller is read before a worker would have started. */
const LARGE = 2 * 1024 * 1024;

/** Reads one mesh file: a large one in a worker of its own, where it can be stopped. Never throws. */
export async function readMeshFile(file: File): Promise<readonly [string, LoadedMesh | RefusedMesh]> {
  const mend = tooLargeMend(file.size);
  if (mend !== null) return [file.name, { refused: mend }];
  const isLarge = file.size >= LARGE && typeof Worker !== "undefined";
  if (isLarge) return [file.name, await inWorker(file)];
  const buffer = await file.arrayBuffer().catch(() => null);
  return [file.name, buffer ? meshOf(readMesh(new Uint8Array(buffer), file.name)) : { refused: UNREADABLE }];
}

function inWorker(file: File): Promise<LoadedMesh | RefusedMesh> {
  return new Promise((resolve) => {
    const client = new WorkClient(startWorker);
    const end = (answer: LoadedMesh | RefusedMesh) => {
      client.stop();
      meshReadings.setState(({ under }) => ({ under: under.filter((one) => one !== reading) }));
      resolve(answer);
    };
    const reading: MeshReading = {
      name: file.name,
      bytes: file.size,
      stop: () => end({ refused: "was not read: reading it was stopped; pick or drop it again" }),
    };
    meshReadings.setState(({ under }) => ({ under: [...under, reading] }));
    void file.arrayBuffer().then(
      (bytes) => {
        if (!meshReadings.getState().under.includes(reading)) return;
        client.run({
          job: "mesh",
          truck: null,
          question: { name: file.name, bytes },
          given: null,
          seconds: null,
          handOver: [bytes],
          onProgress() {},
          onEnd: (ended) =>
            end(
              ended.ok ? meshOf(ended.answer) : { refused: `could not be read: ${ended.message}; reduce it` },
            ),
        });
      },
      () => end({ refused: UNREADABLE }),
    );
  });
}

function meshOf(read: MeshResult): LoadedMesh | RefusedMesh {
  return read.ok ? read.mesh : { refused: read.mend };
}
