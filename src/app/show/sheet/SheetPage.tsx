import { type RefObject, useLayoutEffect, useMemo, useRef } from "react";
import { answerState } from "../../../studies/doubts/doubt.ts";
import { answerHeadline, conditionLines } from "../../../studies/wording/answerWords.ts";
import { codeText, sheetKey } from "../../../studies/wording/packetTexts.ts";
import { aboveTitle, frontTitle, gapNote } from "../../../studies/wording/pictureTexts.ts";
import { verdictSentence } from "../../../studies/wording/verdictSentence.ts";
import { whyInBrief } from "../../../studies/wording/whyWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { Cautions } from "../../parts/ConfirmedNotes.tsx";
import { CutShort } from "../../parts/CutShort.tsx";
import { DoubtNotes } from "../../parts/DoubtNotes.tsx";
import { OddsLine } from "../../parts/odds/OddsLine.tsx";
import { StateMark } from "../../parts/StateMark.tsx";
import { keepTogether } from "../../words/keyWords.ts";
import { alikeDoubts, comparisonSentences, toldOf } from "../counter/comparisonSentences.ts";
import { frontAround, picturesOf } from "../counter/pictures.ts";
import { QrCode, useCode } from "../counter/QrCode.tsx";
import { type Comparison, type Contender, nameWords } from "../counter/useComparison.ts";
import { useComparisonLink } from "../counter/useComparisonLink.ts";
import { WheelPicture } from "../counter/WheelPicture.tsx";
import { useSheetFields } from "../shop/useSheetFields.ts";
import { SheetTable } from "./SheetTable.tsx";

/** Letters are made smaller by steps of this, down to `SMALLEST`, of their usual size. */
const STEP = 0.02;
const SMALLEST = 0.6;

/**
 * Makes the letters of a page of fixed height so small that all of it fits, by its `--letters`. Where the screen's page may grow
 * as it likes, as on a phone, it is laid out as on paper for that, before it is printed.
 */
function useFit(page: RefObject<HTMLElement | null>): void {
  // After every rendering: whatever is written on the page may have grown.
  useLayoutEffect(() => {
    if (page.current) fitLetters(page.current);
  });
  useLayoutEffect(() => {
    const before = () => {
      const { current } = page;
      if (!current) return;
      current.dataset.onPaper = "";
      fitLetters(current);
      delete current.dataset.onPaper;
    };
    addEventListener("beforeprint", before);
    return () => removeEventListener("beforeprint", before);
  }, [page]);
}

function fitLetters(page: HTMLElement): void {
  for (let size = 1; size >= SMALLEST; size -= STEP) {
    page.style.setProperty("--letters", size.toFixed(2));
    if (!isOverfull(page)) return;
  }
}

/** Whether what is on a page reaches past its foot: into its margin too, which the scroll height would not tell. */
function isOverfull(page: HTMLElement): boolean {
  const { paddingBottom, borderBottomWidth } = getComputedStyle(page);
  const margin = Number.parseFloat(paddingBottom) + Number.parseFloat(borderBottomWidth);
  const foot = page.getBoundingClientRect().bottom - margin;
  // Half a pixel: where the last line ends is not told more exactly.
  return (page.lastElementChild?.getBoundingClientRect().bottom ?? 0) > foot + 0.5;
}

export type SheetPageProps = {
  comparison: Comparison;
};

/** Size that a picture's letters are sized for, px: of about the shape it gets. */
const PICTURE_SIZE = { width: 340, height: 250 };

/** The one page a customer takes along: who, when, pictures, answers, numbers, cautions. */
export function SheetPage({ comparison }: SheetPageProps) {
  const { format, travel, first, second } = comparison;
  const model = (first ?? second)?.truck.model ?? null;
  const { shop, customer, truck, logo } = useSheetFields();
  const { front, above, telling } = useMemo(() => picturesOf(comparison), [comparison]);
  const page = useRef<HTMLElement>(null);
  useFit(page);
  const told = toldOf(comparison);
  const alike = alikeDoubts(told);
  const isDoubted = told.some(({ doubts }) => doubts.length > 0);
  const { out, steer } = comparisonSentences(comparison, "letter");
  const { why, downsides } = whyInBrief(told.length < 2 ? [] : told.map(lettered), format);
  const link = useComparisonLink(comparison, true);
  const code = useCode(link?.ok ? link.url : null);
  const characters = link?.ok ? link.url.length : 0;
  const today = new Date().toLocaleDateString("en-US", { dateStyle: "long" });
  return (
    <article
      ref={page}
      className="sheet-page"
      data-doubted={isDoubted ? "" : undefined}
      aria-label="The sheet"
    >
      <header className="sheet-head">
        {logo !== "" && <img src={logo} alt={shop === "" ? "Shop logo" : `${shop} logo`} />}
        <div>
          {shop !== "" && <p className="sheet-shop">{shop}</p>}
          <p className="sheet-title">Will these wheels and tires clear?</p>
          <p>{nameWords(comparison)}</p>
        </div>
        <dl>
          {customer !== "" && <Entry name="Customer" text={customer} />}
          {truck !== "" && <Entry name="Truck" text={truck} />}
          <Entry name="Date" text={today} />
        </dl>
      </header>
      <div className="sheet-told">
        {/* Before the answers, which go on under it over the whole width. */}
        {code && (
          <figure className="sheet-code">
            <QrCode code={code} label={codeText(characters, true, told.length)} />
            <figcaption>{codeText(characters, true, told.length)}</figcaption>
          </figure>
        )}
        <section className="sheet-answers" aria-label="Answers">
          {told.map((contender) => (
            <SheetAnswer
              key={contender.letter}
              contender={contender}
              isAlone={told.length === 1}
              isAlike={alike !== null}
              format={format}
            />
          ))}
          {alike && <DoubtNotes doubts={alike} />}
          {told.map(({ letter, truck }) =>
            letter === "B" && comparison.isWhatIf ? null : (
              <OddsLine key={letter} truck={truck} letter={told.length === 1 ? null : letter} />
            ),
          )}
          <CutShort study="nearest" of={told.map(({ check }) => check)} />
          <CutShort study="ways" of={told.map(({ heights }) => heights)} />
          {[out, steer, why, ...downsides, ...conditionLines(told)].map(
            (text) => text && <p key={text}>{keepTogether(text)}</p>,
          )}
        </section>
      </div>
      <div className="sheet-pictures">
        {(
          [
            ["front", front, frontTitle(travel, model, format)],
            ["above", above, aboveTitle(telling, travel, model)],
          ] as const
        ).map(([view, content, title]) => (
          <figure key={view}>
            <WheelPicture
              view={view}
              title={title}
              pictured={content.pictured}
              body={content.body}
              format={format}
              size={PICTURE_SIZE}
              around={view === "front" ? frontAround(content, null) : []}
            />
            <figcaption>
              {title} {gapNote(content.pictured)}
            </figcaption>
          </figure>
        ))}
      </div>
      <SheetTable told={told} stances={comparison.stances} format={format} />
      <p className="sheet-key">
        {sheetKey(told.length)}
        {link?.ok && code === null && ` ${codeText(characters, false)}`}
      </p>
      <Cautions />
      <p className="sheet-codes">
        Local codes and licensed practice decide what may be built and driven; this sheet does not.
      </p>
    </article>
  );
}

const lettered = ({ letter, truck }: Contender) => ({ letter, model: truck.model });

type SheetAnswerProps = {
  contender: Contender;
  /** No other truck is told of: it needs no letter. */
  isAlone: boolean;
  /** What is in doubt of both is told once, below them. */
  isAlike: boolean;
  format: LengthFormat;
};

/** One truck's answer in words, behind its mark where it is withheld, with what is in doubt of it alone. */
function SheetAnswer({ contender, isAlone, isAlike, format }: SheetAnswerProps) {
  const { letter, name, answer, doubts, truck } = contender;
  const { report } = answer;
  const state = report && answerState(report, doubts);
  return (
    <>
      <p>
        <strong>
          {isAlone ? "" : `${letter} · `}
          {keepTogether(name)}:
        </strong>{" "}
        {state && doubts.some(({ kind }) => kind === state) && (
          <strong>
            <StateMark word={state} /> {answerHeadline(state, truck.setup)}.{" "}
          </strong>
        )}
        {report ? keepTogether(verdictSentence(report, truck.model, format)) : "checking…"}
      </p>
      {!isAlike && <DoubtNotes doubts={doubts} />}
    </>
  );
}

function Entry({ name, text }: { name: string; text: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{text}</dd>
    </div>
  );
}
