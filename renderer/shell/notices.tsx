import { wantsAssessment, withoutAssessment } from "../../core/gate/wants-assessment.ts";
import { listInWords } from "../../core/ground/plain-words.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { words } from "../words/words.ts";
import { AssessmentNow } from "./assessment-now.tsx";
import { dateWords } from "./words.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.notices;

interface NoticesProps {
  /** True beside a board that other people read: then no answer, reading or caution is said in words. */
  readonly inPublic: boolean;
  readonly onKeep: () => void;
}

/** What must be known before reading any number: simulated data, the closed gate, the cautions, the last change. */
export function Notices({ inPublic, onKeep }: NoticesProps) {
  const { workspace } = useWorkspace();
  if (workspace?.session === undefined) return null;
  const { description, gate } = workspace.session;
  const { register, keptAs, demo } = workspace;
  const onlyOpen = register !== undefined && register.kind !== "none" && keptAs === undefined && !demo;
  return (
    <section className="notices" aria-label={prose.region}>
      {description.simulated === true && <p>{prose.simulated}</p>}
      {!inPublic && <p>{cautionsWords(workspace.session)}</p>}
      {onlyOpen && (
        <p>
          {prose.notInTheRegister}{" "}
          <button type="button" className="text-button" onClick={onKeep}>
            {prose.keepItThere}
          </button>
        </p>
      )}
      {!inPublic && wantsAssessment(gate.closures) && <AssessmentNow />}
      {!inPublic && !gate.open && (
        <p className="caution">{prose.everyStatusWithheld(withoutAssessment(gate.reason))}</p>
      )}
      {!inPublic && gate.open && gate.closures.length > 0 && (
        <p className="caution">
          {prose.someStatusesWithheld(gate.closures.map(({ reason }) => withoutAssessment(reason)).join(" "))}
        </p>
      )}
      <div className="notices-change" role="status">
        <LastChange workspace={workspace} />
      </div>
    </section>
  );
}

/** Who answered the cautions when, or what of them is open. */
function cautionsWords({ gate }: SessionResult): string {
  const { given, notKnown, openAtFirst } = gate.answered;
  const last = given.at(-1);
  if (notKnown !== undefined) return prose.cautionsNotKnown(notKnown.by);
  if (last === undefined) return prose.cautionsNotAnswered;
  const open = openAtFirst.length === 0 ? "" : prose.openCautions(listInWords(openAtFirst));
  return prose.cautionsAnswered(dateWords(last.meant.slice(0, 10)), last.by.replace(/\.$/, ""), open);
}

/** What was done, taken back or done again last in this session, and whether that changed a status. */
function LastChange({ workspace: { stepped, undo, undoStep, effect } }: { readonly workspace: Workspace }) {
  if (stepped !== undefined) {
    return (
      <p>
        {stepped} {effect}
      </p>
    );
  }
  if (undo === "") return null;
  return <p>{prose.lastChange(undo, undoStep?.beyond === undefined ? "" : `, ${undoStep.beyond}`, effect)}</p>;
}
