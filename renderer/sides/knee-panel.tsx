import type { KneeRow } from "../../core/criteria/knee-rows.ts";
import { StatusWord } from "../shell/status-word.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.sides;

/** The knee's own rows: what was read and answered of it, which no closed gate withholds. Nothing without any. */
export function KneePanel({ rows }: { readonly rows: readonly KneeRow[] }) {
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby="knee-title">
      <h3 id="knee-title" className="panel-title knee-title">
        {prose.theKneeItself}
      </h3>
      <ul className="criteria-list">
        {rows.map(({ id, label, threshold, status, reason }) => (
          <li key={id}>
            <p>
              {label} <span className="muted">({threshold})</span>
            </p>
            <StatusWord status={status} />
            <p className="muted">{reason}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
