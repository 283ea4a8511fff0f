import { useMemo } from "react";
import { windowJson } from "../../../studies/documents/windowJson.ts";
import { variantTicks } from "../../../studies/window/variantTicks.ts";
import { isNothingKnown, windowSentences } from "../../../studies/wording/windowWords.ts";
import type { Truck } from "../../state/truck.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { whyNone } from "../../work/answerCache.ts";
import { useKnown } from "../../work/useAnswer.ts";
import { CutShort } from "../CutShort.tsx";
import { documentFile } from "../reportFiles.ts";
import { SaveMenu } from "../SaveMenu.tsx";
import { type FieldWindowAsked, useFieldWindow } from "./useFieldWindow.ts";
import { WindowBar, type WindowBarProps } from "./WindowBar.tsx";

export type FieldWindowViewProps = {
  truck: Truck;
  /** The field's key: `knuckle.hubFace`. */
  field: string;
  /** A value tried, mm or radians. Default the field's own. */
  value?: number;
  /** In a panel of its own: the variants stand on the bar, and its document can be saved. Default false. */
  isPanel?: boolean;
};

/** How little and how much a field may be: the bar, and in words what sets each end. */
export function FieldWindowView(props: FieldWindowViewProps) {
  const { truck, field, value, isPanel = false } = props;
  const asked = useFieldWindow(truck, field);
  const ticks = useMemo(
    () => (isPanel ? variantTicks(truck.document, truck.bolted.setup, field, truck.file) : []),
    [isPanel, truck, field],
  );
  if (asked === null) return null;
  const { answer } = asked.answered;
  const file = () =>
    documentFile(truck, "window", "The window", () => windowJson(answer!, truck.setup.units));
  return (
    <>
      <WindowAnswer asked={asked} ticks={ticks} {...(value === undefined ? {} : { value })} />
      {isPanel && answer !== null && <SaveMenu of="the window" files={[file()]} />}
    </>
  );
}

export type WindowAnswerProps = {
  asked: FieldWindowAsked;
  /** Where variants stand. */
  ticks: NonNullable<WindowBarProps["ticks"]>;
  /** A value tried, mm or radians. Default the field's own. */
  value?: number;
};

/** What is known of it, or that it is being worked out. */
export function WindowAnswer({ asked: { answered, window, speech }, ticks, value }: WindowAnswerProps) {
  // A check of the truck as it is proves the one value that it has.
  const check = useKnown("check", answered.wish.truck);
  const failure = whyNone(answered);
  if (failure !== null) return <p>The window could not be worked out: {failure}</p>;
  if (window === null) return <p className="window-wait">Looking how far it can go…</p>;
  const isNowProven = check.answer?.verdict === "clear" && !check.isCut;
  return (
    <div className="window-view" aria-busy={answered.answer === null}>
      {!(isNothingKnown(window) || (window.cutShort && window.fits.length === 0 && isNowProven)) && (
        <WindowBar
          window={window}
          speech={speech}
          ticks={ticks}
          {...(value === undefined ? {} : { value })}
        />
      )}
      <div className="window-words">
        {windowSentences(window, speech, isNowProven).map((sentence) => (
          <p key={sentence}>{keepTogether(sentence)}</p>
        ))}
      </div>
      <CutShort study="window" of={[answered]} />
    </div>
  );
}
