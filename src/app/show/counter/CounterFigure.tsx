import { type ReactNode, useRef } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { useSize } from "../../parts/useSize.ts";
import { keepTogether } from "../../words/keyWords.ts";
import type { PictureContent } from "./pictures.ts";
import { WheelPicture } from "./WheelPicture.tsx";
import type { DrawingView, SheetPoint } from "./wheelDrawing.ts";

export type CounterFigureProps = {
  view: DrawingView;
  content: PictureContent;
  title: string;
  note: string;
  format: LengthFormat;
  /** Points to be held in sight beside the wheels. */
  around: readonly SheetPoint[];
  /** What moves the picture, below it. Default nothing. */
  children?: ReactNode;
};

/** One picture with what it shows written below. */
export function CounterFigure(props: CounterFigureProps) {
  const { view, content, title, note, format, around, children } = props;
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box, { width: 360, height: 360 });
  const { pictured, body } = content;
  return (
    <figure className="counter-figure">
      <div ref={box} className="counter-figure-box">
        {pictured.length > 0 ? (
          <WheelPicture
            view={view}
            title={title}
            pictured={pictured}
            body={body}
            size={size}
            format={format}
            around={around}
          />
        ) : (
          <p className="counter-none">Neither can stand at this height.</p>
        )}
      </div>
      <figcaption>
        <strong>{keepTogether(title)}</strong>{" "}
        <span className="counter-figure-note">{keepTogether(note)}</span>
      </figcaption>
      {children}
    </figure>
  );
}
