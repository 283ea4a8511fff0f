import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { SaveMenu } from "../../../src/app/parts/SaveMenu.tsx";

const drawn = (waits: string | null) =>
  renderToStaticMarkup(createElement(SaveMenu, { of: "the changes", files: [], waits }));

describe("a menu of what can be saved", () => {
  it("keeps its button while there is nothing to save yet, and says why in its description", () => {
    const [ready, waiting] = [drawn(null), drawn("Not yet: looked for again.")];
    expect(ready).toContain('aria-label="Save the changes…" title="Save the changes…"');
    expect(ready).not.toContain("aria-disabled");
    expect(waiting).toContain(
      'aria-label="Save the changes…" aria-disabled="true" title="Not yet: looked for again."',
    );
    const bare = (markup: string) => markup.replace(/ (aria-disabled|title)="[^"]*"/g, "");
    expect(bare(waiting)).toBe(bare(ready));
  });
});
