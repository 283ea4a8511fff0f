/** Frames to wait for a station and its folds to open and draw what they hold. */
const PATIENCE = 120;

/** Does something with an element as soon as the page has drawn it; gives up after two seconds of frames. */
export function whenThere(find: () => HTMLElement | null, then: (element: HTMLElement) => void): void {
  let left = PATIENCE;
  const look = () => {
    const element = find();
    left -= 1;
    if (element) then(element);
    else if (left > 0) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}
