import { afterPadKey, DIGITS, FRACTIONS, type PadKey, padFraction } from "./keypadText.ts";

export type KeypadProps = {
  text: string;
  /** Fractions beside the digits; else a decimal point under them. */
  hasFractions: boolean;
  /** What is read may be less than 0. */
  isSigned: boolean;
  onText: (text: string) => void;
};

/** Big keys for a number read off a tape: digits on the left, the marks of an inch on the right. */
export function Keypad({ text, hasFractions, isSigned, onText }: KeypadProps) {
  const press = (key: PadKey) => onText(afterPadKey(text, key));
  const fraction = padFraction(text);
  // A fraction needs no point.
  const hasSign = isSigned && hasFractions;
  return (
    <fieldset
      className="pad"
      data-fractions={hasFractions}
      aria-label="Keys"
      // The field keeps the focus, so that all that is typed in it is one step to undo.
      onMouseDown={(event) => event.preventDefault()}
    >
      <div className="pad-digits">
        {DIGITS.map((digit) => (
          <button key={digit} type="button" className="pad-key" onClick={() => press(digit)}>
            {digit}
          </button>
        ))}
        <button
          type="button"
          className="pad-key"
          aria-label={hasSign ? "Change the sign" : "Decimal point"}
          onClick={() => press(hasSign ? "±" : ".")}
        >
          {hasSign ? "±" : "."}
        </button>
        <button type="button" className="pad-key" aria-label="Delete the last" onClick={() => press("⌫")}>
          ⌫
        </button>
        {isSigned && !hasFractions && (
          <button type="button" className="pad-key pad-wide" onClick={() => press("±")}>
            + / −
          </button>
        )}
      </div>
      {hasFractions && (
        <div className="pad-fractions">
          {FRACTIONS.map((line, i) => (
            <div key={line[0]} className="pad-line" data-line={i}>
              {line.map((one) => (
                <button
                  key={one}
                  type="button"
                  className="pad-key pad-fraction"
                  aria-pressed={fraction === one}
                  onClick={() => press(one)}
                >
                  <FractionText text={one} />
                </button>
              ))}
            </div>
          ))}
        </div>
      )}
    </fieldset>
  );
}

function FractionText({ text }: { text: string }) {
  const [over, under] = text.split("/");
  return (
    <>
      <sup>{over}</sup>⁄<sub>{under}</sub>
    </>
  );
}
