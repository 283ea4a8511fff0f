/** The hatchings that a map and its key are drawn with. */
export function MapHatches() {
  return (
    <defs>
      <pattern id="map-hatch-rubs" width="9" height="9" patternUnits="userSpaceOnUse">
        <path className="map-hatch-rubs" d="M0 0L9 9M9 0L0 9" />
      </pattern>
      <pattern id="map-hatch-reach" width="6" height="6" patternUnits="userSpaceOnUse">
        <path className="map-hatch-reach" d="M0 6L6 0" />
      </pattern>
      <pattern id="map-hatch-open" width="10" height="10" patternUnits="userSpaceOnUse">
        <circle className="map-hatch-open" cx="5" cy="5" r="1.3" />
      </pattern>
      <pattern id="map-hatch-limit" width="8" height="8" patternUnits="userSpaceOnUse">
        <path className="map-hatch-limit" d="M0 0L8 8M-1 7L1 9M7 -1L9 1" />
      </pattern>
    </defs>
  );
}
