import { type ReactNode, useEffect, useState } from "react";
import { useStore } from "zustand";
import { isWithin, type KeyPath, parseKeyText } from "../../setup/types/keyPath.ts";
import { useStill } from "../parts/useCalm.ts";
import { isOfVariant } from "../state/selectors.ts";
import { unusualAt } from "../state/useDoubts.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import type { Workbench } from "../state/workbenchActions.ts";
import { fieldAsked } from "./fields/fieldAsked.ts";
import { UnusualTag } from "./fields/UnusualTag.tsx";
import { useExampleWord } from "./fields/useIsFromExample.ts";

export type FieldGroupProps = {
  title: string;
  /** Where its fields lie: faults there are told on the closed group, and open it. */
  of: readonly KeyPath[];
  /** Default false. */
  isFirst?: boolean;
  /** Further places to mend that its fields tell of themselves. Default 0. */
  alsoToMend?: number;
  /** What stands in it, said beside its title. Default "": nothing. */
  note?: string;
  children: ReactNode;
};

/** A group of fields that opens and closes. Closed, it draws nothing. */
export function FieldGroup({
  title,
  of,
  isFirst = false,
  alsoToMend = 0,
  note = "",
  children,
}: FieldGroupProps) {
  const [isOpen, setIsOpen] = useState(isFirst);
  const faults = useWorkbench((s) => faultsIn(s, of)) + alsoToMend;
  const isOwn = useStill(useWorkbench((s) => of.some((path) => isOfVariant(s, path))));
  const isUnusual = useStill(useWorkbench((s) => of.some((path) => unusualAt(s, path).length > 0)));
  const word = useExampleWord();
  const hasFault = faults > 0;
  const isAsked = useStore(fieldAsked, (s) =>
    s.path && of.some((at) => isWithin(s.path ?? [], at)) ? s.asked : 0,
  );
  const examples = useStill(useWorkbench((s) => examplesIn(s, of)));
  useEffect(() => {
    if (hasFault || isAsked > 0) setIsOpen(true);
  }, [hasFault, isAsked]);
  return (
    <details
      className="group"
      data-group={title}
      open={isOpen}
      onToggle={(event) => setIsOpen(event.currentTarget.open)}
    >
      <summary>
        <h3>{title}</h3>
        {examples > 0 && (
          <span className="group-example">
            ⋯ {examples} {word}
          </span>
        )}
        {isOwn && <span className="group-own">◆ of the variant</span>}
        {hasFault && <span className="group-fault">✕ {faults} to fix</span>}
        {isUnusual && <UnusualTag />}
        {note !== "" && <span className="group-note">{note}</span>}
      </summary>
      {isOpen && <div className="group-fields">{children}</div>}
    </details>
  );
}

/** How many fields of a group hold an example's number, where some number is the truck's own; else all do, and it is said once. */
function examplesIn({ truck }: Workbench, of: readonly KeyPath[]): number {
  const { fromExample } = truck?.setup ?? {};
  if (!fromExample || fromExample.isAsItCame) return 0;
  return fromExample.fields.filter((path) => of.some((at) => isWithin(path, at))).length;
}

/** How many places of a group have something to mend. */
function faultsIn(s: Workbench, of: readonly KeyPath[]): number {
  const places = new Set<string>();
  for (const draft of Object.values(s.drafts)) {
    if (draft.variant === s.variant && of.some((path) => isWithin(draft.path, path)))
      places.add(draft.path.join("."));
  }
  for (const { key } of s.issues) {
    const at = parseKeyText(key);
    if (at && of.some((path) => isWithin(at, path))) places.add(at.join("."));
  }
  return places.size;
}
