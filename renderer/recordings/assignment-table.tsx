import { useRef } from "react";
import type { AssignedCell, AssignmentRow } from "../../core/assignment/assignment-rows.ts";
import type { Limb } from "../../core/ground/limb.ts";
import { withoutOptions } from "../../core/ground/plain-words.ts";
import type { TestKind } from "../../core/ground/test-kind.ts";
import { boxHeightText } from "../../core/sides/box-height.ts";
import type { RecordingView } from "../../electron/boundary/workspace-view.ts";
import { words } from "../words/words.ts";
import { outcomeWords } from "./reading-words.ts";
import { afterKey, onlyRow, type RowSelection, rangeTo, withToggled } from "./row-selection.ts";

const prose = words.screens.recordingRows;

/** A row of the table: what a trial is taken for, and how its file stands. */
export interface RecordingRow {
  readonly key: string;
  readonly row: AssignmentRow;
  readonly view: RecordingView;
}

interface AssignmentTableProps {
  readonly rows: readonly RecordingRow[];
  readonly selection: RowSelection;
  readonly onSelect: (selection: RowSelection) => void;
  readonly onFillDown: () => void;
}

/** One row a file, or a trial where a file has several. Click, shift-click and keys choose rows as in a list of files. */
export function AssignmentTable({ rows, selection, onSelect, onFillDown }: AssignmentTableProps) {
  const body = useRef<HTMLTableSectionElement>(null);
  const keys = rows.map((each) => each.key);
  const showsBox = rows.some(({ row }) => hasOrOffers(row.dropHeightMetres));
  const showsLead = rows.some(({ row }) => hasOrOffers(row.leadingLeg));

  const press = (event: React.KeyboardEvent) => {
    const control = event.ctrlKey || event.metaKey;
    if (control && event.key.toLowerCase() === "d") {
      event.preventDefault();
      return onFillDown();
    }
    const next = afterKey(selection, { key: event.key, shiftKey: event.shiftKey, control }, keys);
    if (next === undefined) return;
    event.preventDefault();
    onSelect(next);
    body.current?.querySelector<HTMLElement>(`[data-row="${CSS.escape(next.active)}"]`)?.focus();
  };
  const click = (event: React.MouseEvent<HTMLElement>, key: string) => {
    event.currentTarget.focus();
    if (event.shiftKey) onSelect(rangeTo(selection, key, keys));
    else onSelect(event.ctrlKey || event.metaKey ? withToggled(selection, key) : onlyRow(key));
  };

  return (
    <div className="assignment-scroll">
      {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: rows are chosen in it, which makes it a grid */}
      <table className="assignment-table" role="grid" aria-multiselectable="true" aria-labelledby="files-title">
        <thead>
          <tr>
            <th scope="col">{prose.file}</th>
            <th scope="col">{prose.outcome}</th>
            <th scope="col">{prose.test}</th>
            <th scope="col">{prose.limb}</th>
            {showsBox && <th scope="col">{prose.box}</th>}
            {showsLead && <th scope="col">{prose.leads}</th>}
          </tr>
        </thead>
        <tbody ref={body} onKeyDown={press}>
          {rows.map(({ key, row, view }) => (
            <tr
              key={key}
              data-row={key}
              aria-selected={selection.chosen.has(key)}
              className={key === selection.active ? "active-row" : undefined}
              tabIndex={key === selection.active ? 0 : -1}
              onClick={(event) => click(event, key)}
              onMouseDown={(event) => {
                // The browser would mark the text between two clicks.
                if (event.shiftKey) event.preventDefault();
              }}
            >
              <th scope="row" className="file-name">
                {row.file}
                {row.trial !== undefined && <span className="muted"> {prose.ofTrial(row.trial)}</span>}
                {row.practice && " "}
                {row.practice && <span className="row-practice">{prose.practiceJump}</span>}
                <Contradictions row={row} view={view} />
              </th>
              <td>
                <OutcomeWord view={view} />
              </td>
              <td>
                <Cell cell={row.test} words={words.tests.label} />
              </td>
              <td>
                <Cell cell={row.limb} words={limbText} />
              </td>
              {showsBox && (
                <td>
                  <Cell cell={row.dropHeightMetres} words={boxHeightText} isOpen={row.test.value !== undefined} />
                </td>
              )}
              {showsLead && (
                <td>
                  <Cell cell={row.leadingLeg} words={String} isOpen={row.test.value !== undefined} />
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function hasOrOffers<Value>({ value, offers, applies }: AssignedCell<Value>): boolean {
  return value !== undefined || (applies && offers.length > 0);
}

function limbText(limb: Limb): string {
  return limb === "both" ? prose.bothLegs : limb;
}

interface CellProps<Value> {
  readonly cell: AssignedCell<Value>;
  readonly words: (value: Value) => string;
  /** False where it is not known yet whether the trial has one. */
  readonly isOpen?: boolean;
}

/** A value with where it comes from; what is only offered is a question. */
function Cell<Value extends TestKind | Limb | number>({ cell, words, isOpen = true }: CellProps<Value>) {
  const { value, from, offers, applies } = cell;
  if (value === undefined && offers.length === 0 && !(applies && isOpen)) return <span className="muted">–</span>;
  return (
    <>
      {value === undefined ? (
        offers.length === 0 && <span className="muted">{prose.notStated}</span>
      ) : (
        <>
          {words(value)}
          {from !== "stated" && <span className="cell-origin"> {from}</span>}
        </>
      )}
      {offers.map((offer) => (
        <span key={offer.from} className="cell-offer">
          {words(offer.value)}?<span className="cell-origin"> {offer.from}</span>
        </span>
      ))}
    </>
  );
}

function Contradictions({ row, view }: { readonly row: AssignmentRow; readonly view: RecordingView }) {
  const doubts = [
    ...row.contradictions,
    ...(view.sameAs.length === 0 ? [] : [prose.sameRecordingOpen(view.sameAs.join(", "))]),
  ];
  return doubts.map((sentence) => (
    <span key={sentence} className="caution row-contradiction">
      {withoutOptions(sentence)}
    </span>
  ));
}

/** The outcome; what asks for a person stands out. */
function OutcomeWord({ view }: { readonly view: RecordingView }) {
  const warnings = view.findings.filter((each) => each.severity === "warning").length;
  if (view.outcome !== "understood") return <span className="caution outcome">{outcomeWords(view.outcome)}</span>;
  return (
    <>
      {outcomeWords(view.outcome)}
      {warnings > 0 && <span className="muted">, {warnings === 1 ? prose.oneWarning : prose.warnings(warnings)}</span>}
    </>
  );
}
