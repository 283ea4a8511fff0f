import type { Token, Tokens } from "marked";
import { Fragment, type ReactNode } from "react";
import { anchorOf, openDocs, placeOfLink } from "./reader.ts";

export type DocTokensProps = {
  tokens: readonly Token[];
  /** Name of the page they are of: its links lead on from there. */
  page: string;
};

/** Parsed text of a document as elements of the page; nothing of it is taken as markup. */
export function DocTokens({ tokens, page }: DocTokensProps): ReactNode {
  // biome-ignore lint/suspicious/noArrayIndexKey: a document does not change while it is read
  return tokens.map((token, i) => <Fragment key={i}>{element(token, page)}</Fragment>);
}

function element(token: Token, page: string): ReactNode {
  const inside = (tokens: readonly Token[] | undefined) => <DocTokens tokens={tokens ?? []} page={page} />;
  switch (token.type) {
    case "heading":
      return <Heading token={token as Tokens.Heading}>{inside(token.tokens)}</Heading>;
    case "paragraph":
      return <p>{inside(token.tokens)}</p>;
    case "strong":
      return <strong>{inside(token.tokens)}</strong>;
    case "em":
      return <em>{inside(token.tokens)}</em>;
    case "codespan":
      return <code>{(token as Tokens.Codespan).text}</code>;
    case "code":
      // biome-ignore lint/a11y/noNoninteractiveTabindex: long lines are scrolled with the arrow keys
      return <pre tabIndex={0}>{(token as Tokens.Code).text}</pre>;
    case "list": {
      const { ordered, items } = token as Tokens.List;
      const List = ordered ? "ol" : "ul";
      return (
        <List>
          {items.map((item) => (
            <li key={item.raw}>{inside(item.tokens)}</li>
          ))}
        </List>
      );
    }
    case "blockquote":
      return <blockquote>{inside(token.tokens)}</blockquote>;
    case "table":
      return <Table token={token as Tokens.Table} page={page} />;
    case "link":
      return (
        <DocLink href={(token as Tokens.Link).href} page={page}>
          {inside(token.tokens)}
        </DocLink>
      );
    case "image": {
      const { href, text } = token as Tokens.Image;
      return <img src={`./docs/${href}`} alt={text} loading="lazy" />;
    }
    case "br":
    case "html":
      return /^<br\s*\/?>/.test((token as Tokens.HTML).raw) ? <br /> : null;
    case "hr":
      return <hr />;
    case "text": {
      const { tokens, text } = token as Tokens.Text;
      return tokens ? inside(tokens) : plain(text);
    }
    case "escape":
      return (token as Tokens.Escape).text;
    default:
      return null;
  }
}

const ENTITIES: Readonly<Record<string, string>> = {
  "&amp;": "&",
  "&lt;": "<",
  "&gt;": ">",
  "&quot;": '"',
  "&#39;": "'",
};

function plain(text: string): string {
  return text.replace(/&(?:amp|lt|gt|quot|#39);/g, (entity) => ENTITIES[entity] ?? entity);
}

function Heading({ token: { depth, text }, children }: { token: Tokens.Heading; children: ReactNode }) {
  // The reader's own title is the first of all.
  const Level = (["h2", "h3", "h4", "h5"] as const)[Math.min(3, depth - 1)]!;
  return (
    <Level id={`doc-${anchorOf(text)}`} tabIndex={-1}>
      {children}
    </Level>
  );
}

function Table({ token: { header, rows }, page }: { token: Tokens.Table; page: string }) {
  const hasHead = header.some(({ text }) => text !== "");
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled with the arrow keys
    <section className="doc-table" tabIndex={0} aria-label="Table">
      <table>
        {hasHead && (
          <thead>
            <tr>
              {header.map((cell) => (
                <th key={cell.text} scope="col">
                  <DocTokens tokens={cell.tokens} page={page} />
                </th>
              ))}
            </tr>
          </thead>
        )}
        <tbody>
          {rows.map((row) => (
            <tr key={row.map(({ text }) => text).join("|")}>
              {row.map((cell, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: the columns of the table
                <td key={i}>
                  <DocTokens tokens={cell.tokens} page={page} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** A link of a page: into the documents, or away from them. @param page the one it stands on */
export function DocLink({ href, page, children }: { href: string; page: string; children: ReactNode }) {
  const place = placeOfLink(href, page);
  if (place === null)
    return (
      <a href={href.startsWith("http") ? href : `./docs/${href}`} target="_blank" rel="noreferrer">
        {children}
      </a>
    );
  return (
    <a
      href={`./docs/${place.page}.md`}
      onClick={(event) => {
        event.preventDefault();
        openDocs(place);
      }}
    >
      {children}
    </a>
  );
}
