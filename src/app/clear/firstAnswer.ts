import { workbench } from "../state/workbench.ts";
import { work } from "../work/work.ts";

/** ms. A picture is worth more than an answer that takes longer. */
const LONGEST = 2000;

/**
 * Waits until the answer for the truck on the board is told, at most a moment: setting up the picture takes a machine
 * without a graphics card a second, in which nothing else goes on.
 */
export async function firstAnswer(): Promise<void> {
  const { truck } = workbench.getState();
  if (truck === null) return;
  const wish = { job: "check", truck, question: null, given: null } as const;
  await new Promise<void>((done) => {
    const look = () => {
      const { answer, failure } = work.of(wish);
      if (answer === null && failure === null) return;
      stop();
      // When it is seen, not only known.
      requestAnimationFrame(() => setTimeout(done));
    };
    const stop = work.subscribe(look);
    setTimeout(() => {
      stop();
      done();
    }, LONGEST);
    look();
  });
}
