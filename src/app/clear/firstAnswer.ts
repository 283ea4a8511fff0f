import type { Truck } from "../state/truck.ts";
import { workbench } from "../state/workbench.ts";
import { work } from "../work/work.ts";

/** ms. A picture is worth more than an answer that takes longer. */
const LONGEST = 2000;

/** Whether everything of the truck on the board clears. */
function firstWish(truck: Truck) {
  return { job: "check", truck, question: null, given: null } as const;
}

/** Has the answer worked out while the page is put together: the panel that tells it comes with the rest of the page. */
export function askFirst(): void {
  const { truck } = workbench.getState();
  if (truck === null) return;
  const who = {};
  work.want(who, [firstWish(truck)]);
  void firstAnswer().then(() => work.want(who, []));
}

/**
 * Waits until the answer for the truck on the board is told, at most a moment: setting up the picture takes a machine
 * without a graphics card a second, in which nothing else goes on.
 */
export async function firstAnswer(): Promise<void> {
  const { truck } = workbench.getState();
  if (truck === null) return;
  const wish = firstWish(truck);
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
