/** Properties that a drawing over the canvas takes from the page's styles and must carry to stand alone. */
const CARRIED = [
  "fill",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linejoin",
  "paint-order",
  "opacity",
  "visibility",
  "font-family",
  "font-size",
  "font-weight",
  "vector-effect",
] as const;

/** CSS pixels under the picture for its caption. */
const CAPTION = 34;

/**
 * The stage as a PNG: the drawn canvas on the sheet's own color, what is written over it, and a caption beneath.
 * Must be called when the canvas has just been drawn, in the same task. @throws Error when the browser gives no image
 */
export async function pictureOf(
  canvas: HTMLCanvasElement,
  overlay: SVGSVGElement,
  caption: string,
): Promise<Blob> {
  const { clientWidth: width, clientHeight: height } = canvas;
  const scale = Math.max(2, canvas.width / Math.max(1, width));
  const sheet = document.createElement("canvas");
  sheet.width = Math.round(width * scale);
  sheet.height = Math.round((height + CAPTION) * scale);
  const pen = sheet.getContext("2d");
  if (!pen) throw new Error("pictureOf: the browser gives no canvas to put the picture on");
  const style = getComputedStyle(canvas);
  pen.scale(scale, scale);
  pen.fillStyle = style.getPropertyValue("--sheet");
  pen.fillRect(0, 0, width, height + CAPTION);
  pen.drawImage(canvas, 0, 0, width, height);
  pen.drawImage(await imageOf(overlay, width, height, scale), 0, 0, width, height);
  pen.fillStyle = style.getPropertyValue("--ink");
  pen.fillRect(0, height, width, 1);
  pen.font = `14px ${style.fontFamily}`;
  pen.textBaseline = "middle";
  pen.fillText(caption, 12, height + 0.5 * CAPTION + 1, width - 24);
  return new Promise((resolve, reject) =>
    sheet.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error("pictureOf: no image came of it"))),
      "image/png",
    ),
  );
}

async function imageOf(
  overlay: SVGSVGElement,
  width: number,
  height: number,
  scale: number,
): Promise<HTMLImageElement> {
  const copy = overlay.cloneNode(true) as SVGSVGElement;
  const originals = overlay.querySelectorAll("*");
  for (const [i, element] of copy.querySelectorAll<SVGElement>("*").entries()) {
    const style = getComputedStyle(originals[i]!);
    for (const name of CARRIED) element.style.setProperty(name, style.getPropertyValue(name));
  }
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("viewBox", `0 0 ${width} ${height}`);
  copy.setAttribute("width", String(width * scale));
  copy.setAttribute("height", String(height * scale));
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(new XMLSerializer().serializeToString(copy))}`;
  await image.decode();
  return image;
}
