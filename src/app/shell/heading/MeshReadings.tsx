import { useStore } from "zustand";
import { meshReadings } from "../../work/readMeshFile.ts";

/** Bytes in a megabyte, as file sizes are told. */
const MB = 1024 * 1024;

/** Large mesh files that are being read, each with a way to stop it. */
export function MeshReadings() {
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
