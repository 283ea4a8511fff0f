import { useState } from "react";
import { valueAt } from "../../../setup/types/keyPath.ts";
import { GAUGE_WAYS } from "../../../studies/wording/gaugeWords.ts";
import {
  CALIPERED,
  plumbReadings,
  type ReadingDocument,
  STRAIGHTEDGED,
  sizeReadings,
  stickPath,
  stickReading,
} from "../../../studies/worksheet/gaugeReadings.ts";
import { Late, LateBody } from "../../parts/late.tsx";
import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";
import { goToField } from "../fields/fieldAsked.ts";
import { addReadings } from "./addReadings.ts";
import { openLine, worksheetView } from "./worksheetView.ts";

// Few trace a photo: it is fetched where one is.
const PHOTO = new LateBody(async () => (await import("../photo/PhotoPanel.tsx")).PhotoPanel);

type Way = keyof typeof GAUGE_WAYS;

const WAYS = Object.keys(GAUGE_WAYS) as readonly Way[];

/** What else a truck can be read with, each a way to its own cards. */
export function GaugeWays() {
  const [hasPhoto, setHasPhoto] = useState(false);
  return (
    <details className="gauge-ways">
      <summary>Other gauges: level stick, photo, calipers, plumb bob, scan</summary>
      <ul>
        {WAYS.map((way) => (
          <li key={way}>
            <button
              type="button"
              className="start-way"
              aria-expanded={way === "photo" ? hasPhoto : undefined}
              onClick={() => (way === "photo" ? setHasPhoto(!hasPhoto) : begin(way))}
            >
              {GAUGE_WAYS[way].name} <small>{GAUGE_WAYS[way].about}</small>
            </button>
            {way === "photo" && hasPhoto && (
              <Late of={PHOTO} props={{ onPut: putArch }} words="Bringing the photo’s board…" />
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

function begin(way: Exclude<Way, "photo">): void {
  const state = workbench.getState();
  const document = shownDocument(state);
  const add = (asks: readonly ReadingDocument[]) => {
    if (asks.length > 0) addReadings(asks);
  };
  switch (way) {
    case "stick": {
      const there = stickPath(document);
      if (there) openLine(there);
      else add([stickReading(fileUnitsOf(document) === "mm" ? "mm" : "in")]);
      break;
    }
    case "tire": {
      state.beginGesture();
      // The calipers take the place of the size on the sidewall.
      const mine = valueAt(document, ["fromExample", "mine"]);
      if (valueAt(document, ["fromExample"]) !== undefined)
        state.applySuggestion({
          path: ["fromExample", "mine"],
          value: { ...(mine as object | undefined), "tire.size": false },
          kind: "before",
        });
      add(sizeReadings(document, CALIPERED));
      state.endGesture();
      openSize(CALIPERED[0]!);
      break;
    }
    case "wheel":
      add(sizeReadings(document, STRAIGHTEDGED));
      openSize(STRAIGHTEDGED[0]!);
      break;
    case "plumb":
      add(plumbReadings(document) ?? []);
      break;
    case "scan":
      worksheetView.setState({ isFields: true });
      goToField(["truck", "body"]);
      return;
  }
  requestAnimationFrame(() =>
    globalThis.document.querySelector(".reading-card")?.scrollIntoView({ block: "nearest" }),
  );
}

/** A traced arch takes the place of the stations read before; one step to undo. */
function putArch(reading: object): void {
  const state = workbench.getState();
  const there = stickPath(shownDocument(state));
  if (!there) {
    addReadings([reading]);
    return;
  }
  state.applySuggestion({ path: there, value: reading, kind: "before" });
  openLine(there);
}

/** Opens the card of a size that is asked for. */
function openSize(size: string): void {
  const list = valueAt(shownDocument(workbench.getState()), ["readings"]);
  const at = Array.isArray(list) ? list.findIndex((one) => valueAt(one, ["size"]) === size) : -1;
  if (at >= 0) openLine(["readings", at, "is"]);
}
