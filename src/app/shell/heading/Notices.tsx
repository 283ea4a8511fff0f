import { useEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { goOnFrom } from "../../parts/focusOn.ts";
import { notice, putAway } from "../../state/notice.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { meshReadings } from "../../work/readMeshFile.ts";
import { applyUpdate, useOffline } from "../offline/offline.ts";
import { useStorage } from "../storage/pageStorage.ts";

/** Bytes in a megabyte, as file sizes are told. */
const MB = 1024 * 1024;

/** Large mesh files that are being read, each with a way to stop it. */
function MeshReadings() {
  const under = useStore(meshReadings, (s) => s.under);
  return under.map((reading) => (
    <div key={reading.name} className="notice">
      <p>
        Reading {reading.name}, {Math.round(reading.bytes / MB)} MB… <progress aria-label={reading.name} />
      </p>
      <button type="button" className="button" onClick={reading.stop}>
        Stop
      </button>
    </div>
  ));
}

/** What the page has to tell: an answer to what was asked, a newer build, a browser that keeps nothing. */
export function Notices() {
  const shown = useStore(notice, (s) => s.shown);
  const updateReady = useOffline((s) => s.updateReady);
  const isOff = useStorage((s) => s.status === "off");
  const [isOffSeen, setOffSeen] = useState(false);
  // A link is of the truck that was open as it was made.
  const documentId = useWorkbench((s) => s.documentId);
  const shared = useRef(documentId);
  useEffect(() => {
    if (shared.current === documentId) return;
    shared.current = documentId;
    if (notice.getState().shown?.link) putAway();
  }, [documentId]);
  return (
    <div className="notices" role="status">
      {shown && (
        <div className="notice">
          <p>{shown.text}</p>
          {shown.link !== null && <CopyLink link={shown.link} />}
          <button
            type="button"
            className="button"
            onClick={(event) => {
              goOnFrom(event);
              putAway();
            }}
          >
            Close
          </button>
        </div>
      )}
      <MeshReadings />
      {updateReady && (
        <div className="notice">
          <p>A newer version of Wellsweep is ready. The truck that is open is kept.</p>
          <button type="button" className="button" onClick={() => void applyUpdate()}>
            Use it now
          </button>
        </div>
      )}
      {isOff && !isOffSeen && (
        <div className="notice">
          <p>
            This browser keeps nothing between visits (a private window?). Save to a file before you close the
            page.
          </p>
          <button
            type="button"
            className="button"
            onClick={(event) => {
              goOnFrom(event);
              setOffSeen(true);
            }}
          >
            Close
          </button>
        </div>
      )}
    </div>
  );
}

function CopyLink({ link }: { link: string }) {
  const [isCopied, setCopied] = useState(false);
  return (
    <>
      <input
        readOnly
        aria-label="Link to this setup"
        value={link}
        onFocus={(event) => event.target.select()}
      />
      <button
        type="button"
        className="button"
        onClick={() => void navigator.clipboard.writeText(link).then(() => setCopied(true))}
      >
        {isCopied ? "Copied" : "Copy"}
      </button>
    </>
  );
}
