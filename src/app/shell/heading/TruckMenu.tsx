import { Fragment } from "react";
import { fileStem } from "../../../studies/wording/fileStem.ts";
import { startOwnTruck } from "../../measure/worksheet/StartTruck.tsx";
import { goOnFrom } from "../../parts/focusOn.ts";
import { Menu } from "../../parts/Menu.tsx";
import { goToStation } from "../../state/address.ts";
import { notFetched, tell } from "../../state/notice.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { exampleText, workbench } from "../../state/workbench.ts";
import { readMeshFiles } from "../share/openFiles.ts";
import { forgetRecent, reopenRecent, useStorage } from "../storage/pageStorage.ts";
import { EXAMPLE_TRUCKS, type ExampleTruck, WORKED_TRUCKS } from "./exampleTrucks.ts";

const EXAMPLES = [
  ["Examples, invented", EXAMPLE_TRUCKS],
  ["Invented, each to show one thing", WORKED_TRUCKS],
] as const;

/**
 * What an example's setup is called once it is saved: after its truck, as everything else that is saved of it, since it never was a
 * file of this disk. A setup opened from a disk keeps its file's own name: saved again it is to take that file's place, by which its
 * owner, and links to it, find it.
 */
function ownFile(text: string, file: string): string {
  return `${fileStem({ name: JSON.parse(text).name, variant: null }, file)}.json`;
}

/** Setups worked on before, kept in this browser, and the trucks that come with the workbench. */
export function TruckMenu() {
  const recents = useStorage((s) => s.recents);
  const shownId = useWorkbench((s) => s.documentId);
  const others = recents.filter(({ documentId }) => documentId !== shownId);
  const reopen = async (documentId: string) => {
    if (!(await reopenRecent(documentId))) tell("That setup could not be found in this browser any more.");
  };
  const openExample = async ({ file, name, text, mesh }: ExampleTruck) => {
    const read = await Promise.all([text(), mesh && meshFrom(mesh)]).catch(() => null);
    if (!read) return tell(notFetched(name));
    const example = read[0].default;
    workbench.getState().openText(exampleText(example), ownFile(example, file), read[1]);
  };
  return (
    <Menu label="Trucks" isLeft>
      {(close) => (
        <>
          <h2 className="label">Your own truck</h2>
          <ul>
            <li>
              <button
                type="button"
                className="menu-item"
                onClick={() => {
                  close();
                  startOwnTruck();
                }}
              >
                Start your own truck <small>by worksheet: tape, plumb bob, straightedge</small>
              </button>
            </li>
          </ul>
          <h2 className="label">New truck, every number empty</h2>
          <ul>
            {(["in", "mm"] as const).map((units) => (
              <li key={units}>
                <button
                  type="button"
                  className="menu-item"
                  onClick={() => {
                    close();
                    workbench.getState().newTruck(units);
                    goToStation("measure");
                  }}
                >
                  New truck <small>measured in {units === "in" ? "inches" : "millimeters"}</small>
                </button>
              </li>
            ))}
          </ul>
          {others.length > 0 && (
            <>
              <h2 className="label">Worked on before</h2>
              <ul>
                {others.map(({ documentId, name, changedAt, summary }) => (
                  <li key={documentId}>
                    <button
                      type="button"
                      className="menu-item"
                      onClick={() => {
                        close();
                        void reopen(documentId);
                      }}
                    >
                      {name}{" "}
                      <small>
                        {new Date(changedAt).toLocaleString()}: {summary}
                      </small>
                    </button>
                    <button
                      type="button"
                      className="menu-drop"
                      aria-label={`Forget ${name}`}
                      onClick={(event) => {
                        goOnFrom(event);
                        void forgetRecent(documentId);
                      }}
                    >
                      ✕
                    </button>
                  </li>
                ))}
              </ul>
            </>
          )}
          {EXAMPLES.map(([title, trucks]) => (
            <Fragment key={title}>
              <h2 className="label">{title}</h2>
              <ul>
                {trucks.map((example) => (
                  <li key={example.file}>
                    <button
                      type="button"
                      className="menu-item"
                      onClick={() => {
                        close();
                        void openExample(example);
                      }}
                    >
                      {example.name} <small>{example.about}</small>
                    </button>
                  </li>
                ))}
              </ul>
            </Fragment>
          ))}
        </>
      )}
    </Menu>
  );
}

/** The scan that comes with a truck. @throws when it cannot be fetched */
async function meshFrom({ file, address }: NonNullable<ExampleTruck["mesh"]>) {
  const response = await fetch((await address()).default);
  if (!response.ok) throw new Error(`${file}: ${response.status}`);
  return readMeshFiles([new File([await response.blob()], file)]);
}
