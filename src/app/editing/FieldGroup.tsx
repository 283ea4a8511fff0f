import { type ReactNode, useEffect, useState } from "react";
import { isWithin, type KeyPath } from "../../setup/keyPath.ts";
import { parseKeyText } from "../../setup/parseKeyText.ts";
import type { Workbench } from "../state/actionContext.ts";
import { isOfVariant } from "../state/selectors.ts";
import { useWorkbench } from "../state/useWorkbench.ts";

export type FieldGroupProps = {
  title: string;
  /** Where its fields lie: faults there are told on the closed group, and open it. */
  of: readonly KeyPath[];
  /** Default false. */
  isFirst?: boolean;
  children: ReactNode;
};

/** A group of fields that opens and closes. Closed, it draws nothing. */
export function FieldGroup({ title, of, isFirst = false, children }: FieldGroupProps) {
  const [isOpen, setIsOpen] = useState(isFirst);
  const faults = useWorkbench((s) => faultsIn(s, of));
  const isOwn = useWorkbench((s) => of.some((path) => isOfVariant(s, path)));
  const hasFault = faults > 0;
  useEffect(() => {
    if (hasFault) setIsOpen(true);
  }, [hasFault]);
  return (
    <details className="group" open={isOpen} onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>
        <h3>{title}</h3>
        {isOwn && <span className="group-own">◆ of the variant</span>}
        {hasFault && <span className="group-fault">✕ {faults} to mend</span>}
      </summary>
      {isOpen && <div className="group-fields">{children}</div>}
    </details>
  );
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
