import "./openingLink.css";

/** Stands in the page's place while what opens a link is on its way. */
export function OpeningLink() {
  return (
    <p className="opening-link" role="status">
      Opening the link…
    </p>
  );
}
