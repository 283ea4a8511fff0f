import { whenKeysRest } from "../parts/keysAtRest.ts";

/** A ResizeObserver that tells of a new size when nobody types. Where an element stands at first it tells at once. */
export class PatientResize {
  readonly #observer: ResizeObserver;
  #isFirst = true;
  #callOff: () => void = () => undefined;

  constructor(tell: ResizeObserverCallback) {
    this.#observer = new ResizeObserver((entries, observer) => {
      this.#callOff();
      if (this.#isFirst) tell(entries, observer);
      else this.#callOff = whenKeysRest(() => tell(entries, observer));
      this.#isFirst = false;
    });
  }

  observe(target: Element, options?: ResizeObserverOptions): void {
    this.#observer.observe(target, options);
  }

  unobserve(target: Element): void {
    this.#observer.unobserve(target);
  }

  disconnect(): void {
    this.#callOff();
    this.#observer.disconnect();
  }
}
