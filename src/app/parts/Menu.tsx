import "./menu.css";
import { type ReactNode, type RefObject, useEffect, useRef, useState } from "react";

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
  const details = useRef<HTMLDetailsElement>(null);
  const button = () => details.current?.querySelector("summary");
  const isWaiting = waits !== null;
  // What had the focus in the sheet goes with it: the keyboard goes on from the button.
  const close = () => {
    if (details.current?.contains(document.activeElement)) button()?.focus();
    setOpen(false);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: closed as it begins to wait, not at each drawing
  useEffect(() => {
    if (isWaiting && isOpen) close();
  }, [isWaiting, isOpen]);
  useCloses(isOpen, details, () => {
    setOpen(false);
    return button();
  });
  return (
    <details
      className={`menu ${className}`}
      ref={details}
      open={isOpen}
      onToggle={({ currentTarget }) => {
        if (isWaiting) currentTarget.open = false;
        setOpen(currentTarget.open);
      }}
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a summary is the button of its details */}
      <summary
        className={icon ? "button menu-icon" : "button"}
        aria-label={icon ? label : undefined}
        aria-disabled={isWaiting || undefined}
        title={waits ?? (icon ? label : undefined)}
        // The browser would tell of it only a moment after: a key that comes at once is to be heard.
        onClick={(event) => {
          event.preventDefault();
          if (!isWaiting) setOpen(!isOpen);
        }}
      >
        {icon ?? label}
      </summary>
      {isOpen && (
        <div className={isLeft ? "menu-sheet menu-sheet-left" : "menu-sheet"}>{children(close)}</div>
      )}
    </details>
  );
}

/**
 * Closes what is open by Escape, which gives the focus back, and by a press or the focus anywhere else; of one menu inside another
 * Escape closes the inner one. @param close closes it; what it gives back takes the focus after Escape
 */
export function useCloses(
  isOpen: boolean,
  box: RefObject<HTMLElement | null>,
  close: () => HTMLElement | null | undefined,
): void {
  const shut = useRef(close);
  shut.current = close;
  useEffect(() => {
    if (!isOpen) return;
    const closeElsewhere = (event: Event) => {
      const [at, menu] = [event.target as Node, box.current];
      // Words in the sheet take no focus: pressed, they leave it to what stands around the menu.
      const isAround = event.type === "focusin" && at.contains(menu);
      if (!menu?.contains(at) && !isAround) shut.current();
    };
    const closeByKey = (event: KeyboardEvent) => {
      if (event.key !== "Escape" || box.current?.querySelector("details[open]")) return;
      event.stopPropagation();
      shut.current()?.focus();
    };
    document.addEventListener("pointerdown", closeElsewhere, true);
    document.addEventListener("focusin", closeElsewhere);
    document.addEventListener("keydown", closeByKey, true);
    return () => {
      document.removeEventListener("pointerdown", closeElsewhere, true);
      document.removeEventListener("focusin", closeElsewhere);
      document.removeEventListener("keydown", closeByKey, true);
    };
  }, [isOpen, box]);
}
