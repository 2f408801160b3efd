import "./sides.css";
import { useMemo } from "react";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { otherInjuryCautions } from "../../core/sides/other-injuries.ts";
import { WhichFootWasWhere } from "../shell/which-foot-was-where.tsx";
import { words } from "../words/words.ts";
import { CriteriaPanel, StandingCautions } from "./criteria-panel.tsx";
import { InvolvedQuestion } from "./involved-question.tsx";
import { OverlayPanel } from "./overlay-panel.tsx";
import { criterionRows, informationRows } from "./symmetry-rows.ts";
import { SymmetryTable } from "./symmetry-table.tsx";

const prose = words.screens.sides;

/** The two sides against each other: curves, criteria, numbers. */
export function SidesScreen({ session }: { readonly session: SessionResult }) {
  const { involved } = session.description;
  const rows = useMemo(() => criterionRows(session), [session]);
  const information = useMemo(() => informationRows(session), [session]);
  return (
    <>
      <h1 className="visually-hidden">{prose.sides}</h1>
      {involved === undefined && <InvolvedQuestion folder={session.folder} />}
      <WhichFootWasWhere session={session} />
      {otherInjuryCautions(session.description).map((caution) => (
        <p key={caution} className="caution finding">
          {caution}
        </p>
      ))}
      <div className="sides-top">
        <OverlayPanel session={session} />
        <CriteriaPanel session={session} />
      </div>
      <section className="panel symmetry-panel" aria-labelledby="symmetry-title">
        <h2 id="symmetry-title" className="panel-title">
          {tableTitle(involved)}
        </h2>
        {rows.length === 0 ? (
          <p className="muted">{involved === undefined ? prose.notComparedYet : prose.nothingToCompare}</p>
        ) : (
          <SymmetryTable
            caption={tableTitle(involved)}
            groups={rows}
            involved={involved}
            lastColumn={prose.criterion}
            saysWithheld={session.gate.open}
          />
        )}
      </section>
      {information.length > 0 && (
        <section className="panel symmetry-panel" aria-labelledby="information-title">
          <h2 id="information-title" className="panel-title">
            {prose.forInformation}
          </h2>
          <SymmetryTable
            caption={prose.comparisonsForInformation}
            groups={information}
            involved={involved}
            lastColumn={prose.whatToKnow}
          />
        </section>
      )}
      <StandingCautions />
    </>
  );
}

function tableTitle(involved: InvolvedSide | undefined): string {
  switch (involved) {
    case undefined:
      return prose.sideAgainstSide;
    case "none":
      return prose.leftAgainstRight;
    case "both":
      return prose.bothKneesNoIndex;
    default:
      return prose.involvedAgainstUninvolved;
  }
}
