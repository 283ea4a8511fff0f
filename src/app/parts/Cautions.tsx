import "./cautions.css";

/** What a result here does not say. */
export function Cautions() {
  return (
    <footer className="cautions">
      <p>
        <strong>Measure before you trust it.</strong> Every number here is as good as the measurements in the
        setup; rubber flexes, bushings give, and bodies differ side to side. A check that clears does not say
        that a part, a truck or a way of driving is safe. Knuckles and steering parts must be built and
        inspected by qualified people, and must meet the codes where the truck is driven.
      </p>
    </footer>
  );
}
