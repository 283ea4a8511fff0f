import type { LengthUnit } from "../../../setup/types/types.ts";
import { knownName } from "../../../studies/wording/photoWords.ts";
import type { TypedKnown } from "../../../studies/worksheet/photoReading.ts";
import type { Photo } from "./keepPhoto.ts";

/** Points more than these settle a slant by least squares. */
const MOST = 8;

export type KnownPointsProps = {
  photo: Photo;
  units: LengthUnit;
  onChange: (photo: Photo) => void;
};

/** Where the known points of a photo are on the truck, a row a point. */
export function KnownPoints({ photo, units, onChange }: KnownPointsProps) {
  const { known } = photo;
  const change = (at: number, part: Partial<TypedKnown>) =>
    onChange({ ...photo, known: known.map((one, i) => (i === at ? { ...one, ...part } : one)) });
  return (
    <>
      <table className="known-points">
        <caption className="sr-only">Known points of the photo</caption>
        <thead>
          <tr>
            <th scope="col">known point</th>
            <th scope="col">
              ahead <small>{units}</small>
            </th>
            <th scope="col">
              up <small>{units}</small>
            </th>
          </tr>
        </thead>
        <tbody>
          {known.map(({ pixel, ahead, up }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the list
            <tr key={i}>
              <th scope="row">
                {i + 1}. {knownName(i)}
                {pixel === null && <small> not tapped yet</small>}
              </th>
              {(["ahead", "up"] as const).map((key) => (
                <td key={key}>
                  <input
                    className="entry"
                    type="text"
                    inputMode="text"
                    autoComplete="off"
                    aria-label={`${knownName(i)}, ${key}`}
                    value={key === "ahead" ? ahead : up}
                    onChange={({ target }) => change(i, { [key]: target.value })}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <div className="row-tools">
        {known.length < MOST && (
          <button
            type="button"
            className="small-button"
            onClick={() => onChange({ ...photo, known: [...known, { pixel: null, ahead: "", up: "" }] })}
          >
            Add a known point
          </button>
        )}
        {known.length > 2 && (
          <button
            type="button"
            className="small-button"
            onClick={() => onChange({ ...photo, known: known.slice(0, -1) })}
          >
            Take the last away
          </button>
        )}
      </div>
    </>
  );
}
