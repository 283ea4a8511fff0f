import { type ComponentType, lazy, useEffect, useState } from "react";
import { notFetched } from "../state/notice.ts";

/** A component, for React's `Suspense`, that the page can do without: nothing is shown where it cannot be fetched. */
export function lazyOrNothing<P extends object>(load: () => Promise<ComponentType<P>>) {
  return lazy<ComponentType<P>>(async () => ({ default: await load().catch(() => () => null) }));
}

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

type LateProps<P extends object> = { of: LateBody<P>; props: P; words: string };

/**
 * Shows such a component, and some words until it is there. React's own way shows those for 0.3 s at least, however soon it is.
 * Where it cannot be fetched it says so, and is asked for again by a press.
 */
export function Late<P extends object>({ of, props, words }: LateProps<P>) {
  const [isFailed, setFailed] = useState(false);
  const [, setThere] = useState(of.body !== null);
  useEffect(() => {
    if (isFailed) return;
    let isGone = false;
    of.fetch().then(
      () => isGone || setThere(true),
      () => isGone || setFailed(true),
    );
    return () => {
      isGone = true;
    };
  }, [of, isFailed]);
  if (of.body !== null) return <of.body {...props} />;
  if (!isFailed) return <p>{words}</p>;
  return (
    <>
      <p role="alert">{notFetched("This part of the page")} If it still is not, reload the page.</p>
      <div className="row-tools">
        <button type="button" className="button" onClick={() => setFailed(false)}>
          Try again
        </button>
      </div>
    </>
  );
}
