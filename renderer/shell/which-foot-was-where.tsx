import { Button, Modal } from "@mantine/core";
import { useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { tellFinding } from "../../core/words/finding-in-words.ts";
import { words } from "../words/words.ts";
import { namedByContradiction } from "./named-by-contradiction.ts";
import { OtherLeg } from "./other-leg.tsx";
import { StateFeet } from "./state-feet.tsx";
import { TurnRound } from "./turn-round.tsx";

const prose = words.screens.recordingQuestions;

interface WhichFootWasWhereProps {
  readonly session: SessionResult;
}

type Answer = "turned round" | "other leg" | "feet";

/**
 * Says that it is contradicted or unproved which foot stood on which plate, and lets it be answered in one step that can
 * be taken back: left and right of chosen recordings are turned round, the leg of single-leg trials is corrected, or the
 * feet are stated. Nothing where nobody needs to be asked.
 */
export function WhichFootWasWhere({ session }: WhichFootWasWhereProps) {
  const [asking, setAsking] = useState<Answer>();
  const contradiction = session.findings.find((each) => each.code === "plates-contradict");
  const counting = session.trials.filter((trial) => trial.excluded === undefined);
  const unproved = counting.filter((trial) => trial.feet === "unproved");
  const singleLeg = singleLegOf(session, counting);
  if (contradiction === undefined && unproved.length === 0) return null;
  const done = () => setAsking(undefined);
  return (
    <section className="caution finding plates-question" aria-label={prose.whichFootWasWhere}>
      <p>{contradiction === undefined ? unprovedWords(unproved) : tellFinding(contradiction, words)}</p>
      <div className="plates-answers">
        {contradiction !== undefined && (
          <Button variant="default" size="xs" onClick={() => setAsking("turned round")}>
            {prose.turnRound}
          </Button>
        )}
        {contradiction !== undefined && singleLeg.length > 0 && (
          <Button variant="default" size="xs" onClick={() => setAsking("other leg")}>
            {prose.otherLegJumped}
          </Button>
        )}
        {unproved.length > 0 && (
          <Button variant="default" size="xs" onClick={() => setAsking("feet")}>
            {prose.sayWhichFoot}
          </Button>
        )}
      </div>
      <Modal
        opened={asking !== undefined}
        onClose={done}
        title={asking === "other leg" ? prose.whichLegJumped : prose.whichFootWasWhereQuestion}
        closeButtonProps={{ "aria-label": prose.close }}
        size="lg"
        centered
        transitionProps={{ duration: 0 }}
      >
        {asking === "turned round" && <TurnRound session={session} onDone={done} />}
        {asking === "other leg" && <OtherLeg folder={session.folder} trials={singleLeg} onDone={done} />}
        {asking === "feet" && <StateFeet folder={session.folder} trials={unproved} onDone={done} />}
      </Modal>
    </section>
  );
}

/** The single-leg trials a contradiction speaks of: in each of them the other leg may have jumped. */
function singleLegOf(session: SessionResult, counting: readonly TrialResult[]): readonly TrialResult[] {
  const named = namedByContradiction(session);
  return counting.filter((trial) => (trial.limb === "left" || trial.limb === "right") && named.has(trial.file));
}

function unprovedWords(unproved: readonly TrialResult[]): string {
  const files = new Set(unproved.map((trial) => trial.file)).size;
  return prose.feetUnproved(files);
}
