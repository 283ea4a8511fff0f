type Taker = () => Promise<Blob>;

let taker: Taker | null = null;

/** Hands over what can take a picture of the stage as long as it is there. @returns takes it back */
export function offerPictures(take: Taker): () => void {
  taker = take;
  return () => {
    if (taker === take) taker = null;
  };
}

/** The stage as it is now, as a PNG; null while there is no stage. @throws Error when the browser gives no image */
export async function takePicture(): Promise<Blob | null> {
  return taker && (await taker());
}
