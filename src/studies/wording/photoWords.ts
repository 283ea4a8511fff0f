import type { LengthFormat } from "../../units/formatLength.ts";
import type { PhotoRead } from "../worksheet/photoReading.ts";
import { amountText } from "./lengths.ts";

export const PHOTO_WORDS = {
  about:
    "A picture of the left side, from as far away as you can, at hub height. It is opened in this browser, kept on this device, and never sent anywhere. The lens must not bend straight lines.",
  known:
    "Tap the known points in the picture: two where it was taken square to the truck, four or more, all near the plane of the lip, where it was taken at a slant.",
  trace: "Tap along the edge of the lip, from its front to its rear. Drag a point to move it.",
} as const;

/** Said of a file that is no picture. @param name of the file */
export function noPictureSentence(name: string): string {
  return `“${name}” is no picture that this browser can open: choose a JPEG, PNG or WebP; a HEIC photo has to be saved as JPEG first.`;
}

/** What a photo tells so far. */
export function photoSentence(read: PhotoRead, format: LengthFormat): string {
  if (!read.ok) return `${read.mend.charAt(0).toUpperCase()}${read.mend.slice(1)}.`;
  const { stations, within, mmPerPixel, worst } = read;
  const spare =
    worst === null
      ? ""
      : ` The known points come out within ${amountText(worst, format)} of where they were said to be.`;
  return `${stations} of 7 stations of the lip are traced, each good to about ${amountText(within, format)}; one pixel is ${amountText(mmPerPixel, format)}.${spare}`;
}

/** What the two points are called that any truck has. */
export function knownName(at: number): string {
  return ["middle of the hub", "lip over the axle"][at] ?? `known point ${at + 1}`;
}
