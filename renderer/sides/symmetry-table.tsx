import { formatPercent } from "../../core/ground/format-number.ts";
import type { Bearer, InvolvedSide } from "../../core/ground/limb.ts";
import { capitalised, sentences } from "../../core/ground/plain-words.ts";
import { displayUnit } from "../../core/ground/units.ts";
import { type SymmetryAxis, symmetryAxis } from "../../core/sheet/symmetry-line.ts";
import { bearerRole, bearerWords, orderedSides } from "../shell/limb-role.ts";
import { StatusWord } from "../shell/status-word.tsx";
import { words } from "../words/words.ts";
import { type KindOfNote, sharedNotes } from "./shared-notes.ts";
import { IndexWords, RowLine, SideValue } from "./symmetry-cells.tsx";
import { doubtWords, type SymmetryRow, type SymmetryRowGroup, symmetryLine } from "./symmetry-rows.ts";

const prose = words.screens.sides;

interface SymmetryTableProps {
  readonly caption: string;
  readonly groups: readonly SymmetryRowGroup[];
  readonly involved: InvolvedSide | undefined;
  /** Heading of the last column: the criterion, or what there is to say. */
  readonly lastColumn: string;
  /** True where tests are closed singly, so that each withheld row says why. */
  readonly saysWithheld?: boolean;
}

/** Side against side, one measure a row; what must be compared stands on one line. */
export function SymmetryTable({ caption, groups, involved, lastColumn, saysWithheld = false }: SymmetryTableProps) {
  const rows = groups.flatMap((group) => group.rows);
  const axis = symmetryAxis(rows.flatMap((row) => symmetryLine(row) ?? []));
  const heads = columnBearers(rows, involved);
  const numberedKey = rows.find((row) => symmetryLine(row)?.threshold !== undefined)?.key;
  return (
    <table className="symmetry-table">
      <caption className="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{prose.measure}</th>
          {heads.map((bearer) => (
            <th key={words.limbs.bearer(bearer)} scope="col" className={`number limb-${bearerRole(bearer, involved)}`}>
              {bearerWords(bearer, involved)}
            </th>
          ))}
          <th scope="col" className="number">
            <IntervalHeading rows={rows} />
          </th>
          <th scope="col" className="symmetry-axis">
            {prose.axisRange(axis.low, axis.high)}
          </th>
          <th scope="col">{lastColumn}</th>
        </tr>
      </thead>
      {groups.map((group) => {
        const plain = group.rows.filter((row) => row.criterion === undefined);
        const notes = sharedNotes(plain.map(noteOfRow), ["index", "difference"]);
        return (
          <tbody key={group.title}>
            <GroupHeading group={group} note={notes.shared} heads={heads} />
            {group.rows.map((row) => (
              <SymmetryLineRow
                key={row.key}
                row={row}
                note={notes.own[plain.indexOf(row)] ?? ""}
                axis={axis}
                heads={heads}
                involved={involved}
                numbered={row.key === numberedKey}
                saysWithheld={saysWithheld}
              />
            ))}
          </tbody>
        );
      })}
    </table>
  );
}

/** Whose values stand in the two columns: the sides' or, where every comparison is by plate, the plates'. */
function columnBearers(rows: readonly SymmetryRow[], involved: InvolvedSide | undefined): readonly Bearer[] {
  const bases = rows.flatMap(({ comparison }) => comparison?.basis ?? []);
  const byPlate = bases.length > 0 && bases.every((basis) => basis === "plates");
  return byPlate ? [{ plate: 1 }, { plate: 2 }] : orderedSides(involved).map((side) => ({ side }));
}

interface GroupHeadingProps {
  readonly group: SymmetryRowGroup;
  readonly note: string;
  readonly heads: readonly Bearer[];
}

/** The group's name; with headings of its own where its columns are plates and those of the table are sides. */
function GroupHeading({ group, note, heads }: GroupHeadingProps) {
  const isSided = heads.some(({ side }) => side !== undefined);
  const plates = group.rows.flatMap(({ comparison }) =>
    isSided && comparison?.basis === "plates" ? [[comparison.first, comparison.second].map(words.limbs.bearer)] : [],
  )[0];
  const said = note !== "" && <span className="muted group-note"> {note}</span>;
  if (plates === undefined) {
    return (
      <tr className="measure-group">
        <th scope="rowgroup" colSpan={6}>
          {group.title}
          {said}
        </th>
      </tr>
    );
  }
  return (
    <tr className="measure-group">
      <th scope="rowgroup">{group.title}</th>
      {plates.map((name) => (
        <th key={name} scope="col" className="number">
          {name}
        </th>
      ))}
      <td colSpan={3}>{said}</td>
    </tr>
  );
}

/** "index, 80 % interval (95 % thin)", with the confidences the intervals really have. */
function IntervalHeading({ rows }: { readonly rows: readonly SymmetryRow[] }) {
  const [status, drawn] = rows.find((row) => row.intervals.length > 1)?.intervals ?? [];
  if (status === undefined) return "index";
  return (
    <>
      {prose.indexInterval(formatPercent(100 * status.confidence))}
      {drawn !== undefined && (
        <span className="unit"> {prose.thinInterval(formatPercent(100 * drawn.confidence))}</span>
      )}
    </>
  );
}

function noteOfRow({ index, comparison }: SymmetryRow): KindOfNote {
  const without = comparison?.difference === undefined ? "none" : "difference";
  return { kind: index === undefined ? without : "index", note: comparison?.intervalNote ?? "" };
}

interface SymmetryLineRowProps {
  readonly row: SymmetryRow;
  /** What is to be said about its interval that its group has not said. */
  readonly note: string;
  readonly axis: SymmetryAxis;
  readonly heads: readonly Bearer[];
  readonly involved: InvolvedSide | undefined;
  readonly numbered: boolean;
  readonly saysWithheld: boolean;
}

function SymmetryLineRow({ row, note, axis, heads, involved, numbered, saysWithheld }: SymmetryLineRowProps) {
  const { comparison, criterion } = row;
  const doubt = doubtWords(row);
  const [first, second] = heads.map((bearer) =>
    comparison?.basis === "plates" ? "total" : bearerRole(bearer, involved),
  );
  return (
    <tr data-row={row.key} className={doubt === "" ? undefined : "in-doubt"}>
      <th scope="row">
        {row.label}
        {"\u00a0"}
        <span className="unit">{displayUnit(row.unit).symbol}</span>
        {doubt !== "" && <span className="caution doubt-mark">{doubt}</span>}
      </th>
      <td className={`number limb-${first}`}>
        <SideValue row={row} place="first" />
      </td>
      <td className={`number limb-${second}`}>
        <SideValue row={row} place="second" />
      </td>
      <td className="number">
        <IndexWords row={row} />
      </td>
      <td className="symmetry-axis">
        <RowLine row={row} axis={axis} numbered={numbered} />
      </td>
      <td className="symmetry-last">
        {criterion === undefined ? (
          <span className="muted">{sentences(comparison?.weaker ?? "", note)}</span>
        ) : (
          <>
            <StatusWord status={criterion.status} words={words.statuses.words(criterion)} />
            <span className="muted symmetry-reason">
              {/* what closes every test is the same for every row and stands above all of them */}
              {criterion.status === "withheld-today" && !saysWithheld ? "" : `${criterion.reason} `}
              {capitalised(words.statuses.threshold(criterion.criterion))}: {criterion.criterion.source}.
            </span>
          </>
        )}
      </td>
    </tr>
  );
}
