let isWished = false;

/** Somebody pressed Ctrl+P: the packet opened next prints once it is ready. */
export function wishPrint(): void {
  isWished = true;
}

/** Whether that was so; asked once. */
export function takePrintWish(): boolean {
  const was = isWished;
  isWished = false;
  return was;
}
