import { tell } from "../../state/notice.ts";
import { workbench } from "../../state/workbench.ts";
import { saveFile } from "../share/saveFile.ts";
import { shareBoard } from "../share/shareBoard.ts";
import { OpenButton } from "./OpenButton.tsx";
import { TruckMenu } from "./TruckMenu.tsx";

/** Opens, reopens, saves and shares the setup on the board. */
export function FileButtons() {
  const save = async () => {
    if ((await saveFile(workbench)) === "failed") {
      tell("The file could not be written. It is kept in this browser; try another folder.");
    }
  };
  const share = async () => {
    const link = await shareBoard(workbench);
    if (!link.ok) tell(`No link: ${link.mend}.`);
    else tell("This link holds the whole setup; no server sees it.", link.url);
  };
  return (
    <span className="heading-group">
      <OpenButton />
      <TruckMenu />
      <button type="button" className="button" onClick={() => void save()}>
        Save
      </button>
      <button type="button" className="button" onClick={() => void share()}>
        Share
      </button>
    </span>
  );
}
