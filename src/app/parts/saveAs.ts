/** Hands a file to the person, as the browser saves files. */
export function saveAs(name: string, type: string, content: BlobPart): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The browser reads the blob after the click: let go of it later.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
