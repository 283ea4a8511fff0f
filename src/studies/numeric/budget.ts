/** Reads a clock, in milliseconds; only differences count. The caller's: the core knows no clock. */
export type Clock = () => number;

/** Work, in about microseconds, after which the clock is read again. */
const STRIDE = 500;

/**
 * What a study may spend. Every loop that can be long asks `isSpent`, tells about how much it did since it asked last,
 * and ends with what it has reached once it hears yes. Without a budget a study runs to its own end.
 */
export class Budget {
  private work = 0;
  private over = false;
  private cutSome = false;

  /** @param end time of the clock at which it is spent. */
  private constructor(
    private readonly clock: Clock,
    private readonly end: number,
    private readonly whole: Budget | null = null,
  ) {}

  /** @param seconds from now on; above 0, Infinity = never spent */
  static of(seconds: number, clock: Clock): Budget {
    return new Budget(clock, clock() + 1000 * seconds);
  }

  /** One that is never spent. */
  static endless(): Budget {
    return new Budget(() => 0, Number.POSITIVE_INFINITY);
  }

  /** Whether it, or a share of it, told something to end: what that answers may be less than was asked for. */
  get cut(): boolean {
    return this.cutSome;
  }

  /** @param work done since it was asked last, in about microseconds: it reads the clock seldom where that is little. */
  isSpent(work: number): boolean {
    this.work += work;
    if (this.over || this.work < STRIDE) return this.over;
    this.work = 0;
    if (this.clock() < this.end) return false;
    this.over = true;
    for (let each: Budget | null = this; each !== null; each = each.whole) each.cutSome = true;
    return true;
  }

  /** An equal share of what is left, for the first of `things` still to be done; what it leaves falls to the others. */
  share(things: number): Budget {
    if (this.end === Number.POSITIVE_INFINITY) return this;
    const now = this.clock();
    const share = new Budget(this.clock, now + Math.max(0, this.end - now) / things, this);
    // Of nothing, even a first stride would be too much: many shares of it add up.
    if (now >= this.end) share.work = STRIDE;
    return share;
  }
}
