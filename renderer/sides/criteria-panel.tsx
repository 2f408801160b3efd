import { intervalCaution, standingCautions } from "../../core/criteria/cautions.ts";
import type { CriterionResult } from "../../core/criteria/criterion.ts";
import { statusWords } from "../../core/criteria/status.ts";
import type { SessionResult } from "../../core/result.ts";
import { StatusWord } from "../shell/status-word.tsx";

/** The session held against its criteria: each with its status, what qualifies it, and what more trials could do. */
export function CriteriaPanel({ session }: { readonly session: SessionResult }) {
  const { criteriaSet, criteria, gate } = session;
  return (
    <section className="panel panel-padded criteria-panel" aria-labelledby="criteria-title">
      <h2 id="criteria-title" className="panel-title">
        Held against “{criteriaSet.name}”, version {criteriaSet.version}
      </h2>
      <p className="muted">{criteriaSet.population}.</p>
      <p className={gate.open ? "muted" : "caution finding"}>{gate.reason}</p>
      <ul className="criteria-list">
        {criteria.map((result) => (
          <CriterionEntry key={result.criterion.id} result={result} />
        ))}
      </ul>
      <ul className="standing-cautions muted">
        {[...standingCautions, intervalCaution].map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}

function CriterionEntry({ result }: { readonly result: CriterionResult }) {
  const { criterion, status, caution, moreTrials } = result;
  return (
    <li>
      <p>
        {criterion.label}, at least {criterion.atLeastPercent} % <span className="muted">({criterion.source})</span>
      </p>
      <StatusWord status={status} words={statusWords(result)} />
      {moreTrials !== "" && <p className="muted">{moreTrials}</p>}
      {caution !== "" && <p className="caution finding">{caution}</p>}
    </li>
  );
}
