import { statusWords } from "../../core/criteria/status.ts";
import { percentOf, thresholdWords } from "../../core/criteria/threshold.ts";
import { formatPercent, formatValue, joinNumberText, percentDigits } from "../../core/format-number.ts";
import type { InvolvedSide } from "../../core/limb.ts";
import { measureEntry } from "../../core/measures/catalogue.ts";
import { capitalised } from "../../core/plain-words.ts";
import { type SymmetryAxis, symmetryAxis } from "../../core/sheet/symmetry-line.ts";
import { displayUnit } from "../../core/units.ts";
import { SymmetryLinePicture } from "../charts/symmetry-line-picture.tsx";
import { limbRole, limbWords, orderedSides } from "../shell/limb-role.ts";
import { Quantity } from "../shell/quantity.tsx";
import { StatusWord } from "../shell/status-word.tsx";
import { doubtWords, type SymmetryRow, type SymmetryRowGroup, symmetryLine } from "./symmetry-rows.ts";

interface SymmetryTableProps {
  readonly caption: string;
  readonly groups: readonly SymmetryRowGroup[];
  readonly involved: InvolvedSide | undefined;
  /** Heading of the last column: the criterion, or what there is to say. */
  readonly lastColumn: string;
}

/** Side against side, one measure a row; what must be compared stands on one line. */
export function SymmetryTable({ caption, groups, involved, lastColumn }: SymmetryTableProps) {
  const rows = groups.flatMap((group) => group.rows);
  const axis = symmetryAxis(rows.flatMap((row) => symmetryLine(row) ?? []));
  const sides = orderedSides(involved);
  const numberedKey = rows.find((row) => symmetryLine(row)?.threshold !== undefined)?.key;
  return (
    <table className="symmetry-table">
      <caption className="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Measure</th>
          {sides.map((side) => (
            <th key={side} scope="col" className={`number limb-${limbRole(side, involved)}`}>
              {limbWords(side, involved)}
            </th>
          ))}
          <th scope="col" className="number">
            <IntervalHeading rows={rows} />
          </th>
          <th scope="col" className="symmetry-axis">
            {axis.low} % to {axis.high} %
          </th>
          <th scope="col">{lastColumn}</th>
        </tr>
      </thead>
      {groups.map((group) => (
        <tbody key={group.title}>
          <tr className="measure-group">
            <th scope="rowgroup" colSpan={6}>
              {group.title}
            </th>
          </tr>
          {group.rows.map((row) => (
            <SymmetryLineRow
              key={row.key}
              row={row}
              axis={axis}
              involved={involved}
              numbered={row.key === numberedKey}
            />
          ))}
        </tbody>
      ))}
    </table>
  );
}

/** "index, 80 % interval (95 % thin)", with the confidences the intervals really have. */
function IntervalHeading({ rows }: { readonly rows: readonly SymmetryRow[] }) {
  const [status, drawn] = rows.find((row) => row.intervals.length > 1)?.intervals ?? [];
  if (status === undefined) return "index";
  return (
    <>
      index, {formatPercent(100 * status.confidence)} interval
      {drawn !== undefined && <span className="unit"> ({formatPercent(100 * drawn.confidence)} thin)</span>}
    </>
  );
}

interface SymmetryLineRowProps {
  readonly row: SymmetryRow;
  readonly axis: SymmetryAxis;
  readonly involved: InvolvedSide | undefined;
  readonly numbered: boolean;
}

function SymmetryLineRow({ row, axis, involved, numbered }: SymmetryLineRowProps) {
  const { comparison, criterion, reference } = row;
  const [firstSide, secondSide] = orderedSides(involved);
  const line = symmetryLine(row);
  const doubt = doubtWords(row);
  return (
    <tr data-row={row.key} className={doubt === "" ? undefined : "in-doubt"}>
      <th scope="row">
        {row.label} <span className="unit">{displayUnit(row.unit).symbol}</span>
        {doubt !== "" && <span className="caution doubt-mark">{doubt}</span>}
      </th>
      <td className={`number limb-${limbRole(firstSide, involved)}`}>
        <SideValue row={row} value={comparison?.first.mean} perMass={comparison?.first.meanPerBodyMass} />
      </td>
      <td className={`number limb-${limbRole(secondSide, involved)}`}>
        {criterion?.criterion.kind === "against-reference" ? (
          <SideValue row={row} value={reference?.value} perMass={undefined} />
        ) : (
          <SideValue row={row} value={comparison?.second.mean} perMass={comparison?.second.meanPerBodyMass} />
        )}
      </td>
      <td className="number">
        <IndexWords row={row} />
      </td>
      <td className="symmetry-axis">
        {line !== undefined && (
          <SymmetryLinePicture line={line} axis={axis} numbered={numbered} inDoubt={doubt !== ""} />
        )}
      </td>
      <td className="symmetry-last">
        {criterion === undefined ? (
          <span className="muted">{[comparison?.weaker, comparison?.intervalNote].filter(Boolean).join(" ")}</span>
        ) : (
          <>
            <StatusWord status={criterion.status} words={statusWords(criterion)} />
            <span className="muted symmetry-reason">
              {/* the reason of a closed gate is the same for every row and stands above all of them */}
              {criterion.status === "withheld-today" ? "" : `${criterion.reason} `}
              {capitalised(thresholdWords(criterion.criterion))}: {criterion.criterion.source}.
            </span>
          </>
        )}
      </td>
    </tr>
  );
}

interface SideValueProps {
  readonly row: SymmetryRow;
  readonly value: number | undefined;
  readonly perMass: number | undefined;
}

function SideValue({ row, value, perMass }: SideValueProps) {
  return (
    <>
      <Quantity value={value} unit={row.unit} />
      {perMass !== undefined && row.comparison !== undefined && (
        <span className="unit per-mass">
          {joinNumberText(formatValue(perMass, undefined, measureEntry(`${row.comparison.measure}PerBodyMass`).unit))}
        </span>
      )}
    </>
  );
}

function IndexWords({ row }: { readonly row: SymmetryRow }) {
  const [interval] = row.intervals;
  const threshold = row.criterion && percentOf(row.criterion.criterion);
  const thresholds = threshold === undefined ? [] : [threshold];
  if (row.comparison?.difference !== undefined) {
    return (
      <>
        <Quantity value={row.comparison.difference} unit={row.unit} withUnit />{" "}
        <span className="muted">difference</span>
      </>
    );
  }
  return (
    <>
      <strong>{formatPercent(row.index, thresholds)}</strong>
      {interval !== undefined && (
        <span className="muted">
          {" "}
          {percentDigits(interval.low, thresholds)} to {percentDigits(interval.high, thresholds)}
        </span>
      )}
    </>
  );
}
