import "./photo.css";
import { useEffect, useMemo, useRef, useState } from "react";
import type { LengthUnit } from "../../../setup/types/types.ts";
import { noPictureSentence, PHOTO_WORDS, photoSentence } from "../../../studies/wording/photoWords.ts";
import { firstKnown, photoReading } from "../../../studies/worksheet/photoReading.ts";
import { lengthFormat, shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { KnownPoints } from "./KnownPoints.tsx";
import { keepPhoto, keptPhoto, type Photo, pictureOf } from "./keepPhoto.ts";
import { PhotoBoard } from "./PhotoBoard.tsx";

export type PhotoPanelProps = {
  /** Takes the traced arch as the file holds a reading. */
  onPut: (reading: object) => void;
};

/** A fender arch traced in a side photo: known points place it, the traced lip becomes a reading of stations. */
export function PhotoPanel({ onPut }: PhotoPanelProps) {
  const documentId = useWorkbench((s) => s.documentId);
  const document = useWorkbench(shownDocument);
  const units = useWorkbench((s) => fileUnitsOf(s.document)) as LengthUnit;
  const format = useWorkbench(lengthFormat);
  const file = useRef<HTMLInputElement>(null);
  const [photo, setPhoto] = useState<Photo | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    let isGone = false;
    void keptPhoto(documentId).then((kept) => {
      if (!isGone) setPhoto(kept);
    });
    return () => {
      isGone = true;
    };
  }, [documentId]);
  const change = (next: Photo | null) => {
    setPhoto(next);
    void keepPhoto(documentId, next);
  };
  const open = async (chosen: File) => {
    const picture = await pictureOf(chosen);
    setFault(picture === null ? noPictureSentence(chosen.name) : null);
    if (picture) change({ name: chosen.name, ...picture, known: firstKnown(document), traced: [] });
  };
  const read = useMemo(
    () => photo && photoReading(document, units, photo.known, photo.traced),
    [photo, document, units],
  );
  return (
    <section className="photo-panel" aria-label="Fender arch from a side photo">
      <p>{PHOTO_WORDS.about}</p>
      <div className="row-tools">
        <button type="button" className="button" onClick={() => file.current?.click()}>
          {photo ? "Another photo…" : "Choose a photo…"}
        </button>
        {photo && (
          <button type="button" className="button" onClick={() => change(null)}>
            Take the photo away
          </button>
        )}
      </div>
      <input
        ref={file}
        type="file"
        accept="image/*"
        aria-label="Photo of the truck's left side"
        hidden
        onChange={({ target }) => {
          const [chosen] = target.files ?? [];
          target.value = "";
          if (chosen) void open(chosen);
        }}
      />
      {fault !== null && (
        <p className="fault" role="alert">
          <span aria-hidden="true">✕ </span>
          {fault}
        </p>
      )}
      {photo && (
        <>
          <PhotoBoard photo={photo} onChange={change} />
          <KnownPoints photo={photo} units={units} onChange={change} />
          {read && (
            <p role="status" className={read.ok ? undefined : "photo-missing"}>
              {photoSentence(read, format)}
            </p>
          )}
          <button
            type="button"
            className="button reading-next"
            disabled={!read?.ok}
            onClick={() => read?.ok && onPut(read.reading)}
          >
            Put the arch on the truck
          </button>
        </>
      )}
    </section>
  );
}
