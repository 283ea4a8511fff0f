const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Text between tags or in double quotes: marked up, and characters that XML 1.0 cannot hold turned into spaces. */
export function xmlText(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, " ")
    .replace(/[&<>"]/g, (mark) => ENTITIES[mark]!);
}
