import { type ComponentType, useEffect, useState } from "react";

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
 * @throws Error, as it is drawn, where it cannot be fetched
 */
export function Late<P extends object>({ of, props, words }: LateProps<P>) {
  const [failure, setFailure] = useState<unknown>(null);
  const [, setThere] = useState(of.body !== null);
  useEffect(() => {
    let isGone = false;
    of.fetch().then(
      () => isGone || setThere(true),
      (error: unknown) => isGone || setFailure(error ?? new Error("cannot be fetched")),
    );
    return () => {
      isGone = true;
    };
  }, [of]);
  if (failure !== null) throw failure;
  return of.body === null ? <p>{words}</p> : <of.body {...props} />;
}
