import { useRef, useState } from "react";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { readMeshFiles } from "../../shell/share/openFiles.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { BodyPartFields } from "./BodyPartFields.tsx";
import { newBox, newPath } from "./newPart.ts";

export type BodyPartsProps = { truck: Truck };

const BODY: KeyPath = ["truck", "body"];

/** The parts of the body that the tire might touch: each with its fields, and ways to add more. */
export function BodyParts({ truck }: BodyPartsProps) {
  const body = useWorkbench((s) => valueAt(shownDocument(s), BODY));
  const list: readonly unknown[] = Array.isArray(body) ? body : [];
  const [fresh, setFresh] = useState(-1);
  const meshFile = useRef<HTMLInputElement>(null);
  const add = (make: typeof newPath) => {
    const state = workbench.getState();
    const names = list.map((part) => String(valueAt(part, ["name"])));
    setFresh(list.length);
    state.insertItem(BODY, list.length, make(truck, names, fileUnitsOf(state.document)));
  };
  const addMesh = async (file: File) => {
    const meshes = await readMeshFiles([file]);
    const read = meshes.files.get(file.name);
    const { addMeshes, dismissRefusal, refuse } = workbench.getState();
    if (read && "refused" in read) {
      refuse({ file: file.name, key: "", value: "", mend: read.refused });
      return;
    }
    // What was refused before is another matter.
    dismissRefusal();
    setFresh(list.length);
    addMeshes(meshes);
  };
  return (
    <>
      {list.length === 0 && <p className="part-note">No body parts: nothing is measured against the tire.</p>}
      {list.map((part, i) => (
        <BodyPartFields
          // biome-ignore lint/suspicious/noArrayIndexKey: names change while they are typed, and two may be the same
          key={i}
          index={i}
          count={list.length}
          kind={String(valueAt(part, ["kind"]) ?? "")}
          name={String(valueAt(part, ["name"]) ?? "")}
          truck={truck}
          isFresh={i === fresh}
        />
      ))}
      <div className="row-tools part-add">
        <button type="button" className="small-button" onClick={() => add(newPath)}>
          Add an arch
        </button>
        <button type="button" className="small-button" onClick={() => add(newBox)}>
          Add a box
        </button>
        <button type="button" className="small-button" onClick={() => meshFile.current?.click()}>
          Add a scan…
        </button>
        <input
          ref={meshFile}
          type="file"
          accept=".stl,.obj,.ply,.glb"
          aria-label="Mesh file of a body part"
          hidden
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            event.target.value = "";
            if (file) void addMesh(file);
          }}
        />
      </div>
    </>
  );
}
