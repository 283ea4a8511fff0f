import { useEffect, useMemo } from "react";
import type { TrimmedPart } from "../../../studies/change/changeTypes.ts";
import type { PaperName } from "../../../studies/drawings/shopFile.ts";
import { trimFiles } from "../../../studies/drawings/trimPattern.ts";
import { setupHeading } from "../../../studies/wording/answerWords.ts";
import { TRIM_CAUTION } from "../../../studies/wording/trimWords.ts";
import { FileList } from "../../parts/sheets/FileList.tsx";
import { PrintSheets } from "../../parts/sheets/PrintSheets.tsx";
import { trimView } from "../../state/trimView.ts";
import type { Truck } from "../../state/truck.ts";
import { keepTogether } from "../../words/keyWords.ts";

/** What a trim takes of a panel: drawn in the picture while this is shown, as files to save and as sheets to print. */
export function TrimTemplates({ truck, trim }: { truck: Truck; trim: TrimmedPart }) {
  const { model } = truck;
  const paper: PaperName = model.setup.units === "in" ? "letter" : "a4";
  const { files, pages } = useMemo(
    () => trimFiles(trim.regions, model, paper, setupHeading(model.setup)),
    [trim, model, paper],
  );
  useEffect(() => {
    const shown = trim.regions.flatMap(({ places, part }) => {
      const isBoth =
        model.mirrored && model.setup.truck.body.some((b) => b.name === part && b.side === "both");
      return isBoth ? [...places, ...places.map(mirrored)] : places;
    });
    trimView.setState({ outlines: shown });
    return () => trimView.setState({ outlines: [] });
  }, [trim, model]);
  if (files.length === 0) return null;
  return (
    <details className="change-trim">
      <summary>Templates to cut by, 1:1</summary>
      <p>{keepTogether(`What goes is hatched in the picture. ${TRIM_CAUTION}`)}</p>
      <PrintSheets pages={pages} />
      <FileList files={files} />
    </details>
  );
}

function mirrored(points: Float64Array): Float64Array {
  return points.map((value, i) => (i % 3 === 1 ? -value : value));
}
