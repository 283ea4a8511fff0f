import { type ComponentType, useEffect, useReducer, useState } from "react";
import { NotFetched } from "./NotFetched.tsx";

/** A component that is fetched where it is first shown, or before. */
export class LateBody<P extends object> {
  #body: ComponentType<P> | null = null;

  constructor(private readonly load: () => Promise<ComponentType<P>>) {}

  /** null = not there yet. */
  get body(): ComponentType<P> | null {
    return this.#body;
  }

  /** @throws Error where it cannot be; the next asking tries again */
  async fetch(): Promise<void> {
    this.#body ??= await this.load();
  }
}

type LateProps<P extends object> = {
  of: LateBody<P>;
  props: P;
  /** "" = nothing is said before it is there. */
  words: string;
  /** Of what is said in its place. */
  className?: string;
  /** Told where it cannot be fetched; default it is said in its place. */
  onMissing?: () => void;
};

/**
 * Shows such a component, and some words until it is there. React's own way shows those for 0.3 s at least, however soon it is.
 * Where it cannot be fetched it says so, and is asked for again by a press.
 */
export function Late<P extends object>({ of, props, words, className, onMissing }: LateProps<P>) {
  const [isFailed, setFailed] = useState(false);
  // Another component may come to stand in the same place: each that arrives is drawn.
  const [, arrived] = useReducer((count: number) => count + 1, 0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what it is told by does not fetch it anew
  useEffect(() => {
    if (isFailed) return;
    let isGone = false;
    of.fetch().then(
      () => isGone || arrived(),
      () => {
        if (isGone) return;
        if (onMissing) onMissing();
        else setFailed(true);
      },
    );
    return () => {
      isGone = true;
    };
  }, [of, isFailed]);
  if (of.body !== null) return <of.body {...props} />;
  if (!isFailed)
    return words === "" ? null : (
      <p className={className} role="status">
        {words}
      </p>
    );
  return <NotFetched what="This part of the page" className={className} onAgain={() => setFailed(false)} />;
}

type LateExtraProps<P extends object> = {
  of: LateBody<P>;
  props: P;
  /** What it is about: where it could not be fetched, it is asked for again with the next. */
  about: unknown;
};

/** The same of what the page can do without: nothing is shown until it is there. */
export function LateExtra<P extends object>({ of, props, about }: LateExtraProps<P>) {
  const [, arrived] = useReducer((count: number) => count + 1, 0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked for again
  useEffect(() => {
    let isGone = false;
    of.fetch().then(
      () => isGone || arrived(),
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [of, about]);
  return of.body && <of.body {...props} />;
}
