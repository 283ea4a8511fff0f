/** Gives a point's mark the focus. @param inside anything in the drawing that holds the marks */
export function focusHandle(inside: Element, key: string): void {
  inside
    .closest("svg")
    ?.querySelector<SVGGElement>(`[data-point="${CSS.escape(key)}"]`)
    ?.focus();
}
