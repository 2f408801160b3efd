import { Button } from "@mantine/core";
import { useId } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { WeightGroup } from "../../core/weight/another-athlete.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.recordingRows;

/** A group is named by so many of its recordings. */
const mostNamed = 8;

interface AthleteQuestionProps {
  readonly folder: string;
  readonly question: NonNullable<SessionResult["athleteQuestion"]>;
  /** Gravity the session was analysed with, m/s². */
  readonly gravity: number;
}

/** Whose recordings are these: two groups of weights that no one person can have, and what may be done about it. */
export function AthleteQuestionPanel({ folder, question, gravity }: AthleteQuestionProps) {
  const { apply } = useWorkspace();
  const title = useId();
  const { groups, difference } = question;
  const decide = (trials: WeightGroup["trials"], decision: { kept: true } | { excluded: { reason: string } }) =>
    void apply("trials.keepOrExclude", { folder, trials, decision });
  return (
    <section className="panel panel-padded athlete-question" aria-labelledby={title}>
      <h2 id={title} className="panel-title">
        {prose.anotherAthlete}
      </h2>
      <p>{prose.weightsDiffer((100 * difference).toFixed(1))}</p>
      <ul className="athlete-groups">
        {groups.map((group) => {
          const mass = (group.newtons / gravity).toFixed(1);
          const about = prose.trialsOfMass(group.trials.length, mass);
          return (
            <li key={mass}>
              <p>
                <strong>{about}</strong>: {namesOf(group)}
              </p>
              <Button
                variant="default"
                size="compact-sm"
                onClick={() =>
                  decide(group.trials, {
                    excluded: { reason: prose.weighsOther(mass) },
                  })
                }
              >
                {prose.excludeThe(about)}
              </Button>
            </li>
          );
        })}
      </ul>
      <Button variant="default" onClick={() => decide([...groups[0].trials, ...groups[1].trials], { kept: true })}>
        {prose.keepAll}
      </Button>
    </section>
  );
}

function namesOf({ trials }: WeightGroup): string {
  const names = [...new Set(trials.map(({ file }) => file))];
  const named = names.slice(0, mostNamed).join(", ");
  return names.length > mostNamed ? prose.andMore(named, names.length - mostNamed) : named;
}
