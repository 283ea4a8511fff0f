import "./menu.css";
import { type ReactNode, useEffect, useRef, useState } from "react";

export type MenuProps = {
  /** What its button says; with `icon`, what it is called. */
  label: string;
  /** Drawn in place of the label. */
  icon?: ReactNode;
  /** Its sheet stands under the left end of the button rather than the right one. */
  isLeft?: boolean;
  className?: string;
  /** Why it cannot be opened now; its button stays where it is. Default it can. */
  waits?: string | null;
  /** @param close shuts the menu: for what takes the person elsewhere */
  children: (close: () => void) => ReactNode;
};

/**
 * A button with a sheet under it, which is made only when it opens. Escape and a press anywhere else close it, and one
 * menu is open at a time.
 */
export function Menu({ label, icon, isLeft = false, className = "", waits = null, children }: MenuProps) {
  const [isOpen, setOpen] = useState(false);
  if (waits !== null && isOpen) setOpen(false);
  const details = useRef<HTMLDetailsElement>(null);
  const close = () => setOpen(false);
  useEffect(() => {
    if (!isOpen) return;
    const closeElsewhere = (event: Event) => {
      const [at, menu] = [event.target as Node, details.current];
      // Words in the sheet take no focus: pressed, they leave it to what stands around the menu.
      const isAround = event.type === "focusin" && at.contains(menu);
      if (!menu?.contains(at) && !isAround) setOpen(false);
    };
    const closeByKey = (event: KeyboardEvent) => {
      if (event.key !== "Escape") return;
      event.stopPropagation();
      setOpen(false);
      details.current?.querySelector("summary")?.focus();
    };
    document.addEventListener("pointerdown", closeElsewhere, true);
    document.addEventListener("focusin", closeElsewhere);
    document.addEventListener("keydown", closeByKey, true);
    return () => {
      document.removeEventListener("pointerdown", closeElsewhere, true);
      document.removeEventListener("focusin", closeElsewhere);
      document.removeEventListener("keydown", closeByKey, true);
    };
  }, [isOpen]);
  return (
    <details
      className={`menu ${className}`}
      ref={details}
      open={isOpen}
      onToggle={({ currentTarget }) => {
        if (waits !== null) currentTarget.open = false;
        setOpen(currentTarget.open);
      }}
    >
      <summary
        className={icon ? "button menu-icon" : "button"}
        aria-label={icon ? label : undefined}
        aria-disabled={waits === null ? undefined : true}
        title={waits ?? (icon ? label : undefined)}
      >
        {icon ?? label}
      </summary>
      {isOpen && (
        <div className={isLeft ? "menu-sheet menu-sheet-left" : "menu-sheet"}>{children(close)}</div>
      )}
    </details>
  );
}
