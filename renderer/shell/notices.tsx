import { asSentence } from "../../core/plain-words.ts";
import { dateWords } from "./words.ts";
import { useWorkspace } from "./workspace.tsx";

/** What must be known before reading any number: simulated data, the closed gate, the cautions, the last change. */
export function Notices({ onKeep }: { readonly onKeep: () => void }) {
  const { workspace } = useWorkspace();
  if (workspace?.session === undefined) return null;
  const { description, gate } = workspace.session;
  const { cautions } = description;
  const { register, keptAs, demo } = workspace;
  const onlyOpen = register !== undefined && register.kind !== "none" && keptAs === undefined && !demo;
  return (
    <section className="notices" aria-label="Notices">
      {description.simulated === true && <p>Simulated recordings of an invented athlete.</p>}
      <p>
        {cautions === undefined
          ? "Cautions for jump testing: no answers recorded."
          : asSentence(`Cautions answered ${dateWords(cautions.date)}, ${cautions.answeredBy}`)}
        {cautions?.note !== undefined && ` ${asSentence(cautions.note)}`}
      </p>
      {onlyOpen && (
        <p>
          Not in the register.{" "}
          <button type="button" className="text-button" onClick={onKeep}>
            Keep it there
          </button>
        </p>
      )}
      {!gate.open && <p className="caution">{gate.reason} Values are shown; statuses are withheld today.</p>}
      {workspace.undo !== "" && (
        <p className="notices-change">
          Last change: {workspace.undo}. {workspace.effect}
        </p>
      )}
    </section>
  );
}
