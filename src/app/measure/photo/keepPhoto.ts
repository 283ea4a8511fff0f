import type { Pixel } from "../../../studies/measure/photoPlane.ts";
import type { TypedKnown } from "../../../studies/worksheet/photoReading.ts";

/** A photo being traced: the picture and what was tapped in it. */
export interface Photo {
  readonly name: string;
  readonly picture: Blob;
  readonly width: number;
  readonly height: number;
  readonly known: readonly TypedKnown[];
  readonly traced: readonly Pixel[];
}

const STORE = "photos";

function opened(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open("wellsweep-photos", 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** The photo of a document as it was left; null = none, or the browser keeps nothing. */
export async function keptPhoto(documentId: string): Promise<Photo | null> {
  try {
    const box = await opened();
    return await new Promise((resolve, reject) => {
      const request = box.transaction(STORE).objectStore(STORE).get(documentId);
      request.onsuccess = () => resolve((request.result as Photo | undefined) ?? null);
      request.onerror = () => reject(request.error);
    });
  } catch {
    return null; // private browsing
  }
}

/** Keeps a photo as it is now, on this device alone; null = takes it away. Nothing is kept where the browser keeps nothing. */
export async function keepPhoto(documentId: string, photo: Photo | null): Promise<void> {
  try {
    const box = await opened();
    const store = box.transaction(STORE, "readwrite").objectStore(STORE);
    if (photo === null) store.delete(documentId);
    else store.put(photo, documentId);
  } catch {
    // private browsing
  }
}

/** Px. A picture is kept no larger: finer than a tap. */
const LARGEST = 2000;

/** A file as a picture to be traced, made smaller where it is large; null = it is no picture. */
export async function pictureOf(file: File): Promise<Pick<Photo, "picture" | "width" | "height"> | null> {
  try {
    const bitmap = await createImageBitmap(file);
    const share = Math.min(1, LARGEST / Math.max(bitmap.width, bitmap.height));
    const [width, height] = [Math.round(bitmap.width * share), Math.round(bitmap.height * share)];
    const canvas = new OffscreenCanvas(width, height);
    canvas.getContext("2d")!.drawImage(bitmap, 0, 0, width, height);
    bitmap.close();
    return { picture: await canvas.convertToBlob({ type: "image/jpeg", quality: 0.9 }), width, height };
  } catch {
    return null; // no picture, or one that this browser cannot read
  }
}
