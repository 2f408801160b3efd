import { formatPercent, formatValue, joinNumberText, percentDigits } from "../../core/ground/format-number.ts";
import { measureEntry } from "../../core/ground/measures/catalogue.ts";
import { percentOf, thresholdOf } from "../../core/ground/threshold.ts";
import type { SymmetryAxis } from "../../core/sheet/symmetry-line.ts";
import { SymmetryLinePicture } from "../charts/symmetry-line-picture.tsx";
import { Quantity } from "../shell/quantity.tsx";
import { words } from "../words/words.ts";
import { type SymmetryRow, symmetryLine } from "./symmetry-rows.ts";
import { ValueLine } from "./value-line.tsx";

const prose = words.screens.sides;

interface SideValueProps {
  readonly row: SymmetryRow;
  /** Of the involved (or left) side, or of the other one. */
  readonly place: "first" | "second";
}

/** The value of one side, and the same per body mass where that makes sense. */
export function SideValue({ row, place }: SideValueProps) {
  const { comparison, criterion, reference } = row;
  const asked = criterion?.criterion;
  // what asks for one leg's value has none while nobody knows whose the values are
  if (comparison?.basis === "plates" && asked !== undefined && asked.kind !== "symmetry") return null;
  if (asked?.kind === "against-reference" && place === "second") {
    return <Quantity value={reference?.value} unit={row.unit} />;
  }
  // a value of both legs together belongs to neither column
  if (asked?.kind === "absolute" && asked.legs === "both") return null;
  const side = comparison?.[place];
  return (
    <>
      <Quantity value={side?.mean} unit={row.unit} />
      {side?.meanPerBodyMass !== undefined && comparison !== undefined && (
        <span className="unit per-mass">
          {joinNumberText(
            formatValue(side.meanPerBodyMass, undefined, measureEntry(`${comparison.measure}PerBodyMass`).unit),
          )}
        </span>
      )}
    </>
  );
}

/** The index and its interval; a difference, where times are compared; the value itself, where one is asked for. */
export function IndexWords({ row }: { readonly row: SymmetryRow }) {
  const { criterion, comparison, index, unit } = row;
  if (criterion?.criterion.kind === "absolute") return <AskedValue row={row} />;
  if (comparison?.difference !== undefined) {
    return (
      <>
        <Quantity value={comparison.difference} unit={unit} withUnit />{" "}
        <span className="muted">{prose.difference}</span>
      </>
    );
  }
  const [interval] = row.intervals;
  const threshold = criterion && percentOf(criterion.criterion);
  const thresholds = threshold === undefined ? [] : [threshold];
  return (
    <>
      <strong>{formatPercent(index, thresholds)}</strong>
      {interval !== undefined && (
        <span className="muted">
          {" "}
          {prose.percentRange(percentDigits(interval.low, thresholds), percentDigits(interval.high, thresholds))}
        </span>
      )}
    </>
  );
}

function AskedValue({ row: { criterion, unit } }: { readonly row: SymmetryRow }) {
  if (criterion?.estimate === undefined) return <Quantity value={undefined} unit={unit} />;
  const { estimate, interval } = criterion;
  const { show, digits } = thresholdOf(criterion.criterion);
  return (
    <>
      <strong>{show(estimate)}</strong>
      {interval !== undefined && (
        <span className="muted"> {prose.range(digits(interval.low), digits(interval.high))}</span>
      )}
      {criterion.criterion.legs === "both" && <span className="unit per-mass">{prose.bothLegsTogether}</span>}
    </>
  );
}

interface RowLineProps {
  readonly row: SymmetryRow;
  readonly axis: SymmetryAxis;
  readonly numbered: boolean;
}

/** What must be compared, on a line. */
export function RowLine({ row, axis, numbered }: RowLineProps) {
  const { criterion, comparison } = row;
  if (criterion?.criterion.kind === "absolute") {
    const ofInvolved = criterion.criterion.legs === "single" && comparison?.basis === "involved-uninvolved";
    return <ValueLine result={criterion} colour={ofInvolved ? "var(--involved)" : "var(--ink)"} />;
  }
  const line = symmetryLine(row);
  if (line === undefined) return null;
  return <SymmetryLinePicture line={line} axis={axis} numbered={numbered} />;
}
