import { NotFetched } from "../parts/NotFetched.tsx";
import { DocLink } from "./DocTokens.tsx";
import { allSections, excerpt, sectionsWith } from "./docSearch.ts";
import { GUIDES, LOOKED_UP } from "./pageList.ts";
import { useFetched } from "./useFetched.ts";

/** More are not read through: another word is typed. */
const MOST = 30;

type FirstPageProps = { typed: string; onTyped: (typed: string) => void };

/** What help there is: the guides, every page with what is in it, and a search through them. */
export function FirstPage({ typed, onTyped }: FirstPageProps) {
  const isAsked = typed.trim().length > 1;
  return (
    <>
      <label className="docs-search">
        Search the help
        <input type="search" value={typed} onChange={(event) => onTyped(event.target.value)} />
      </label>
      {isAsked ? (
        <Results typed={typed} />
      ) : (
        <>
          <h2>Start here</h2>
          <PageList of={GUIDES} className="docs-list docs-guides" />
          <h2>Look it up</h2>
          <PageList of={LOOKED_UP} className="docs-list" />
        </>
      )}
    </>
  );
}

function PageList({ of, className }: { of: typeof GUIDES; className: string }) {
  return (
    <ul className={className}>
      {of.map(([page, title, about]) => (
        <li key={page}>
          <DocLink href={`${page}.md`} page={page}>
            {title}
          </DocLink>
          <p>{about}</p>
        </li>
      ))}
    </ul>
  );
}

function Results({ typed }: { typed: string }) {
  const sections = useFetched("all", allSections);
  if (sections.is === "missing") return <NotFetched what="Help" onAgain={sections.askAgain} />;
  const found = sectionsWith(sections.is === "there" ? sections.value : [], typed);
  return (
    <>
      <p role="status">{sections.is === "awaited" ? "Searching…" : countWords(found.length)}</p>
      <ul className="docs-list docs-found">
        {found.slice(0, MOST).map((one) => (
          <li key={one.page + one.anchor + one.text}>
            <DocLink href={`${one.page}.md#${one.anchor}`} page={one.page}>
              {one.title === one.heading ? one.title : `${one.title} › ${one.heading}`}
            </DocLink>
            <p>{excerpt(one, typed)}</p>
          </li>
        ))}
      </ul>
    </>
  );
}

function countWords(count: number): string {
  if (count === 0) return "Nothing has all these words: try fewer, or others.";
  if (count > MOST) return `The first ${MOST} of ${count} places: another word makes them fewer.`;
  return count === 1 ? "1 place" : `${count} places`;
}
