import { type FileUnits, findLengthUnit, MM_PER_INCH, mmFromUnits } from "./lengthUnits.ts";
import { plainMeasureText } from "./measureText.ts";
import { type ParsedLength, parseLength, readLengthTerm } from "./parseLength.ts";
import { withDecimalPoints } from "./parseNumber.ts";

/** Longest text worked out; a sum of a dozen tape readings is shorter. */
const MAX_EXPRESSION_TEXT = 200;

/** mm. A million kilometers: nothing measured with a tape, and still told exactly. */
const MAX_RESULT = 1e12;

/** Parentheses inside parentheses; nobody reads more, and each level takes stack. */
const MAX_PARENTHESES = 16;

/**
 * A value on the way: a length in mm, or a number without a unit, which is a length in the bare units where it
 * stands beside a length, and a plain factor where it multiplies or divides one.
 */
interface Value {
  readonly amount: number;
  readonly isLength: boolean;
}

/**
 * Works out a length typed as arithmetic: `5 5/8 + 1/8`, `2*3 1/4`, `(5 1/2 - 1/16)/2`, `6 in - 3 mm`. Takes all
 * that `parseLength` takes, with the same meaning: `5-5/8` is a mixed number, `5 - 5/8` a difference. Times and
 * divided go before plus and minus, from the left. A length times a length, or divided by one, is refused: the
 * result is no length. Never throws.
 * @param bareUnits the unit of numbers written without one
 */
export function evaluateLength(text: string, bareUnits: FileUnits): ParsedLength {
  const plainLength = parseLength(text, bareUnits);
  if (plainLength.ok || text.trim() === "") return plainLength;
  if (text.length > MAX_EXPRESSION_TEXT) {
    return { ok: false, mend: `longer than ${MAX_EXPRESSION_TEXT} characters; write a shorter sum` };
  }
  const points = withDecimalPoints(text);
  if (!points.ok) return points;
  const plain = plainMeasureText(points.text.replace(/[×·]/g, "*").replace(/÷/g, "/"));
  // What is no sum at all gets the mend for a length: it names the unit or the number that is wrong.
  if (!/[*()]|[-+/] |\d ?["'a-z.]* ?[-+/]/i.test(plain.replace(/^[-+] ?/, ""))) return plainLength;
  try {
    const mm = new ExpressionReader(plain, bareUnits).whole();
    return Math.abs(mm) < MAX_RESULT
      ? { ok: true, mm: mm + 0 }
      : { ok: false, mend: "the result is too large" };
  } catch (error) {
    if (error instanceof ExpressionFault) return { ok: false, mend: error.message };
    throw error;
  }
}

/** Ends the reading of an expression; its message is the mend. Never leaves this file. */
class ExpressionFault extends Error {}

class ExpressionReader {
  readonly #plain: string;
  readonly #bareUnits: FileUnits;
  #at = 0;
  #depth = 0;

  constructor(plain: string, bareUnits: FileUnits) {
    this.#plain = plain;
    this.#bareUnits = bareUnits;
  }

  /** mm. */
  whole(): number {
    const value = this.#sum();
    this.#skipSpace();
    if (this.#at < this.#plain.length) {
      const rest = this.#plain.slice(this.#at);
      if (rest.startsWith(")")) throw new ExpressionFault('there is a ")" too many; take it out');
      throw new ExpressionFault(`cannot read "${rest}" after "${this.#read()}"; put +, -, * or / between`);
    }
    return this.#asLength(value);
  }

  #sum(): Value {
    let value = this.#product();
    for (let sign = this.#take("+", "-"); sign !== null; sign = this.#take("+", "-")) {
      const next = this.#product();
      const factor = sign === "+" ? 1 : -1;
      value =
        value.isLength || next.isLength
          ? { amount: this.#asLength(value) + factor * this.#asLength(next), isLength: true }
          : { amount: value.amount + factor * next.amount, isLength: false };
    }
    return value;
  }

  #product(): Value {
    let value = this.#signed();
    for (let sign = this.#take("*", "/"); sign !== null; sign = this.#take("*", "/")) {
      const next = this.#signed();
      if (sign === "*") {
        if (value.isLength && next.isLength) {
          throw new ExpressionFault("a length times a length is an area; leave the unit off one of the two");
        }
        value = { amount: value.amount * next.amount, isLength: value.isLength || next.isLength };
      } else {
        if (next.isLength) {
          throw new ExpressionFault(
            "divides by a length, so the result is no length; divide by a plain number",
          );
        }
        if (next.amount === 0) throw new ExpressionFault("divides by zero");
        value = { amount: value.amount / next.amount, isLength: value.isLength };
      }
    }
    return value;
  }

  #signed(): Value {
    const sign = this.#take("-", "+");
    if (sign !== null && this.#take("-", "+") !== null) throw new ExpressionFault("has two signs in a row");
    const value = this.#take("(") === null ? this.#measure() : this.#inParentheses();
    return sign === "-" ? { ...value, amount: -value.amount } : value;
  }

  #inParentheses(): Value {
    this.#depth += 1;
    if (this.#depth > MAX_PARENTHESES) throw new ExpressionFault("has too many parentheses");
    const value = this.#sum();
    if (this.#take(")") === null) {
      const rest = this.#plain.slice(this.#at);
      throw new ExpressionFault(
        rest === "" ? 'a "(" is not closed; add ")"' : `cannot read "${rest}"; put +, -, *, / or ) before it`,
      );
    }
    this.#depth -= 1;
    // (5 + 3) mm
    const name = /^ ?(["']|[a-z]+\.?)/i.exec(this.#plain.slice(this.#at));
    if (!name) return value;
    const unit = findLengthUnit(name[1]!);
    if (!unit) throw new ExpressionFault(`unknown unit "${name[1]}" after ")"`);
    if (value.isLength) throw new ExpressionFault(`what stands before ") ${name[1]}" has a unit already`);
    this.#at += name[0].length;
    return { amount: value.amount * unit.mm, isLength: true };
  }

  #measure(): Value {
    this.#skipSpace();
    const start = this.#at;
    if (start === this.#plain.length) {
      const before = this.#read();
      throw new ExpressionFault(
        before === "" ? "a number is missing" : `a number is missing after "${before}"`,
      );
    }
    if (!/[\d.]/.test(this.#plain[start]!)) {
      throw new ExpressionFault(`cannot read "${this.#plain.slice(start)}"; a number belongs here`);
    }
    const term = readLengthTerm(this.#plain, start, this.#bareUnits);
    if (!term.ok) throw new ExpressionFault(term.mend);
    // A trailing space belongs to what follows.
    this.#at = term.end;
    if (term.unit === null) return { amount: term.value, isLength: false };
    if (term.unit !== "ft" || !term.whole) return { amount: term.mm, isLength: true };
    return { amount: term.mm + this.#inchesAfterFeet(), isLength: true };
  }

  /** The `3 1/4"` of `5' 3 1/4"`, mm; 0 when the feet stand alone. A dash between the two could be a minus. */
  #inchesAfterFeet(): number {
    const rest = this.#plain.slice(this.#at);
    const dashed = /^ ?- ?[\d./ ]+(?:"|in\b|inch(?:es)?\b)/i.test(rest);
    if (dashed) {
      throw new ExpressionFault(
        `"${rest.trim()}" after feet can be read two ways; write 5' 3" for a length, (5') - 3" for a difference`,
      );
    }
    const join = /^ ?(?=[\d.])/.exec(rest);
    if (!join) return 0;
    const inches = readLengthTerm(this.#plain, this.#at + join[0].length, "in");
    if (!inches.ok) throw new ExpressionFault(inches.mend);
    if (inches.unit !== "in" && inches.unit !== null)
      throw new ExpressionFault("feet are followed by inches only");
    if (inches.value >= 12) throw new ExpressionFault("the inches after the feet must be less than 12");
    this.#at = inches.end;
    return inches.value * MM_PER_INCH;
  }

  #asLength(value: Value): number {
    return value.isLength ? value.amount : mmFromUnits(value.amount, this.#bareUnits);
  }

  #skipSpace(): void {
    if (this.#plain[this.#at] === " ") this.#at += 1;
  }

  #read(): string {
    return this.#plain.slice(0, this.#at).trim();
  }

  #take(...signs: readonly string[]): string | null {
    this.#skipSpace();
    const next = this.#plain[this.#at];
    if (next === undefined || !signs.includes(next)) return null;
    this.#at += 1;
    return next;
  }
}
