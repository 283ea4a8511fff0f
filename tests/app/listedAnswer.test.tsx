import { renderToStaticMarkup } from "react-dom/server";
import { expect, it, vi } from "vitest";
import { ListedAnswer } from "../../src/app/show/shop/ListedAnswer.tsx";
import { trucks } from "../../src/app/state/truck.ts";
import { workbench } from "../../src/app/state/workbench.ts";
import { readFits } from "../../src/studies/chart/readFits.ts";

it("a wheel of a long list is put on no truck before its line is seen", () => {
  const { good, file, truck } = workbench.getState();
  const lines = Array.from({ length: 300 }, (_, i) => `Wheel ${i},15,8,${3 + i / 300}`);
  const list = ["name,wheel.rimDiameter,wheel.rimWidth,wheel.backspacing", ...lines].join("\n");
  const fits = readFits(list, { document: good!.document, setup: truck!.setup, file });
  if (!fits.ok) throw new Error(fits.issues[0]!.mend);
  const make = vi.spyOn(trucks, "make");
  try {
    const html = renderToStaticMarkup(
      fits.value.map((fit) => <ListedAnswer key={fit.name} fit={fit} base={null} />),
    );
    expect(html.match(/checking…/g)).toHaveLength(300);
    expect(make).not.toHaveBeenCalled();
  } finally {
    make.mockRestore();
  }
});
