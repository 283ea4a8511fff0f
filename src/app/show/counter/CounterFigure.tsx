import { useRef } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { useWidth } from "../../parts/useWidth.ts";
import type { PictureContent } from "./pictures.ts";
import { WheelPicture } from "./WheelPicture.tsx";
import type { DrawingView } from "./wheelDrawing.ts";

export type CounterFigureProps = {
  view: DrawingView;
  content: PictureContent;
  title: string;
  note: string;
  format: LengthFormat;
  /** mm that the outer edge may yet move. */
  slack: number;
};

/** One picture with what it shows written below. */
export function CounterFigure({ view, content, title, note, format, slack }: CounterFigureProps) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, 360);
  const { pictured, body } = content;
  return (
    <figure className="counter-figure">
      <div ref={box}>
        {pictured.length > 0 ? (
          <WheelPicture
            view={view}
            title={title}
            pictured={pictured}
            body={body}
            width={width}
            format={format}
            slack={slack}
          />
        ) : (
          <p className="counter-none">Neither can stand at this height.</p>
        )}
      </div>
      <figcaption>
        <strong>{title}</strong> {note}
      </figcaption>
    </figure>
  );
}
