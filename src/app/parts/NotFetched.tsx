import { notFetched } from "../state/notice.ts";

type NotFetchedProps = {
  /** With an upper-case letter. */
  what: string;
  className?: string | undefined;
  onAgain: () => void;
};

/** In place of what did not come over the network: that it did not, and a press to ask for it again. */
export function NotFetched({ what, className, onAgain }: NotFetchedProps) {
  return (
    <div className={className}>
      <p role="alert">{notFetched(what)} If it still is not, reload the page.</p>
      <div className="row-tools">
        <button type="button" className="button" onClick={onAgain}>
          Try again
        </button>
      </div>
    </div>
  );
}
