import { Button } from "@mantine/core";
import { useId } from "react";
import { countOf } from "../../core/ground/plain-words.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { WeightGroup } from "../../core/weight/another-athlete.ts";
import { useWorkspace } from "../shell/workspace.tsx";

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
        Another athlete?
      </h2>
      <p>
        The weights of this session are {(100 * difference).toFixed(1)}&nbsp;% apart, more than one person's can be.
        Until somebody answers, no weight is pooled and trials are held out of means. Another athlete's recordings
        belong to that athlete's own session: take them out of this one and bring them in there. A weighing that is
        wrong (a hand on a rail) is excluded. Keep them if all are one person's.
      </p>
      <ul className="athlete-groups">
        {groups.map((group) => {
          const mass = (group.newtons / gravity).toFixed(1);
          const about = `${countOf(group.trials.length, "trial")} of ${mass} kg`;
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
                    excluded: { reason: `weighs ${mass} kg: another athlete or a wrong weighing` },
                  })
                }
              >
                Exclude the {about}
              </Button>
            </li>
          );
        })}
      </ul>
      <Button variant="default" onClick={() => decide([...groups[0].trials, ...groups[1].trials], { kept: true })}>
        Keep all: they are one person's
      </Button>
    </section>
  );
}

function namesOf({ trials }: WeightGroup): string {
  const names = [...new Set(trials.map(({ file }) => file))];
  const named = names.slice(0, mostNamed).join(", ");
  return names.length > mostNamed ? `${named} and ${names.length - mostNamed} more` : named;
}
