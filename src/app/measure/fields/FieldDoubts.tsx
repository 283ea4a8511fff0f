import { useMemo } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { DoubtNotes } from "../../parts/DoubtNotes.tsx";
import { useStill } from "../../parts/useCalm.ts";
import { unusualAt } from "../../state/useDoubts.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";

export type FieldDoubtsProps = {
  path: KeyPath;
};

const NONE: ReturnType<typeof unusualAt> = [];

/** What is unusual of a field, with a button to say that it is so; nothing where all is usual. */
export function FieldDoubts({ path }: FieldDoubtsProps) {
  // One text for all, so that a change elsewhere draws nothing here anew.
  const texts = useWorkbench((s) =>
    unusualAt(s, path)
      .map(({ text }) => text)
      .join("\n"),
  );
  const now = useMemo(() => (texts === "" ? NONE : unusualAt(workbench.getState(), path)), [texts, path]);
  const doubts = useStill(now);
  return doubts.length === 0 ? null : <DoubtNotes doubts={doubts} canConfirm />;
}
