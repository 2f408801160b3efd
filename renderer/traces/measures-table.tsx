import { Fragment, useState } from "react";
import type { Bearer, InvolvedSide } from "../../core/ground/limb.ts";
import type { MeasureEntry } from "../../core/ground/measures/catalogue.ts";
import { displayUnit } from "../../core/ground/units.ts";
import type { Measure } from "../../core/measures/measure.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { bearerRole, orderedSides } from "../shell/limb-role.ts";
import { Quantity } from "../shell/quantity.tsx";
import { words } from "../words/words.ts";
import { isCount, type MeasureRow, measureColumns, measureRows } from "./measure-rows.ts";

const prose = words.screens.traceTables;

interface MeasuresTableProps {
  readonly trial: TrialResult;
  readonly involved: InvolvedSide | undefined;
}

/** Every measure of the trial in the order of the catalogue; definition and source on demand. */
export function MeasuresTable({ trial, involved }: MeasuresTableProps) {
  const [withForms, setWithForms] = useState(false);
  const [opened, setOpened] = useState("");
  const columns = measureColumns(trial, orderedSides(involved));
  if (trial.measures.length === 0) {
    return (
      <section className="panel measures" aria-label={prose.measures}>
        <h2 className="panel-title">{prose.measures}</h2>
        <p className="muted">{prose.noMeasure}</p>
      </section>
    );
  }
  const table = (forms: boolean) => (
    <MeasureTable
      trial={trial}
      forms={forms}
      columns={columns}
      involved={involved}
      opened={opened}
      onOpen={(id) => setOpened(id === opened ? "" : id)}
    />
  );
  return (
    <section className="panel measures" aria-label={prose.measures}>
      <h2 className="visually-hidden">{prose.measures}</h2>
      {table(false)}
      <button
        type="button"
        className="text-button measures-more"
        aria-expanded={withForms}
        onClick={() => setWithForms(!withForms)}
      >
        {withForms ? prose.hidePerBodyMass : prose.perBodyMass}
      </button>
      {withForms && table(true)}
      <p className="muted measures-foot">{prose.aboutUncertainty}</p>
    </section>
  );
}

interface MeasureTableProps extends MeasuresTableProps {
  readonly forms: boolean;
  readonly columns: readonly Bearer[];
  readonly opened: string;
  readonly onOpen: (id: string) => void;
}

function MeasureTable({ trial, forms, columns, involved, opened, onOpen }: MeasureTableProps) {
  return (
    <table className="measure-table">
      <caption className="visually-hidden">{forms ? prose.measuresPerBodyMass : prose.measuresOfTrial}</caption>
      <thead>
        <tr>
          <td />
          {columns.map((bearer) => (
            <th key={words.limbs.bearer(bearer)} scope="col" className={`number limb-${bearerRole(bearer, involved)}`}>
              {words.limbs.bearer(bearer)}
            </th>
          ))}
        </tr>
      </thead>
      {measureRows(trial, forms).map(({ group, rows }) => (
        <tbody key={group}>
          <tr className="measure-group">
            <th scope="rowgroup" colSpan={columns.length + 1}>
              {words.measures.groupLabel(group)}
            </th>
          </tr>
          {rows.map((row) => (
            <Fragment key={row.entry.id}>
              <MeasureLine
                row={row}
                columns={columns}
                involved={involved}
                open={row.entry.id === opened}
                onOpen={() => onOpen(row.entry.id)}
              />
              {row.entry.id === opened && <DefinitionLine entry={row.entry} width={columns.length + 1} />}
            </Fragment>
          ))}
        </tbody>
      ))}
    </table>
  );
}

interface MeasureLineProps {
  readonly row: MeasureRow;
  readonly columns: readonly Bearer[];
  readonly involved: InvolvedSide | undefined;
  readonly open: boolean;
  readonly onOpen: () => void;
}

function MeasureLine({ row, columns, involved, open, onOpen }: MeasureLineProps) {
  const { entry, values } = row;
  const missing = Object.keys(values).length === 0;
  return (
    <tr data-measure={entry.id}>
      <th scope="row">
        <button
          type="button"
          className="measure-name"
          aria-expanded={open}
          onClick={onOpen}
          onKeyDown={(press) => {
            if (press.key !== "F1") return;
            press.preventDefault();
            onOpen();
          }}
        >
          {words.measures.label(entry.id)}
          {"\u00a0"}
          <span className="unit">{displayUnit(entry.unit).symbol}</span>
        </button>
      </th>
      {columns.map((bearer, index) => {
        const name = words.limbs.bearer(bearer);
        const measure = values[name];
        return (
          <td key={name} data-side={name} className={`number limb-${bearerRole(bearer, involved)}`}>
            {measure !== undefined && <MeasureValue entry={entry} measure={measure} />}
            {missing && index === 0 && <Quantity value={undefined} unit={entry.unit} />}
          </td>
        );
      })}
    </tr>
  );
}

/** A count has no decimals. */
function MeasureValue({ entry, measure }: { readonly entry: MeasureEntry; readonly measure: Measure }) {
  if (isCount(entry)) return <>{measure.value}</>;
  return <Quantity value={measure.value} uncertainty={measure.uncertainty} unit={measure.unit} />;
}

function DefinitionLine({ entry, width }: { readonly entry: MeasureEntry; readonly width: number }) {
  return (
    <tr className="measure-definition">
      <td colSpan={width}>
        {prose.definitionAndSource(
          words.measures.definition(entry.id),
          entry.source.replace(/\.$/, ""),
          entry.informationOnly === true ? prose.forInformationOnly : "",
        )}
      </td>
    </tr>
  );
}
