import { Button } from "@mantine/core";
import { isFromBefore } from "../../core/sides/involvement.ts";
import type { AthletePage } from "../../electron/register/register-views.ts";
import { today } from "../shell/dates.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { asksWhetherInjured, operationsOnOtherSide, recordName } from "./injury-doubts.ts";

const prose = words.screens.athleteRecord;

interface InjuryQuestionsProps {
  readonly page: AthletePage;
  readonly onAdd: () => void;
  readonly onEdit: (kind: "injuries" | "operations", id: string) => void;
}

/** What is not known, or does not fit together, about which side is involved: each asked where it can be answered. */
export function InjuryQuestions({ page, onAdd, onEdit }: InjuryQuestionsProps) {
  const { apply } = useWorkspace();
  const { athlete, injuries, operations } = page;
  const from = [...injuries, ...operations].filter(({ content }) => isFromBefore(content));
  const nobodyInjured = () =>
    void apply("records.save", {
      record: { kind: "athletes", id: athlete.id, content: { ...athlete.content, nobodyInjured: today() } },
    });
  return (
    <>
      {asksWhetherInjured(page) && (
        <section className="caution finding plates-question" aria-label={prose.isAnybodyInjured}>
          <p>{prose.nobodyHasSaid}</p>
          <div className="plates-answers">
            <Button size="xs" variant="default" onClick={onAdd}>
              {prose.addInjury}
            </Button>
            <Button size="xs" variant="default" onClick={nobodyInjured}>
              {prose.nobodyIsInjured}
            </Button>
          </div>
        </section>
      )}
      {operationsOnOtherSide(page).map(({ operation, injury }) => (
        <section key={operation.id} className="caution finding plates-question" aria-label={prose.differentSides}>
          <p>
            {prose.sidesDiffer(recordName(injury), injury.content.side, recordName(operation), operation.content.side)}
          </p>
          <div className="plates-answers">
            <Button size="xs" variant="default" onClick={() => onEdit("injuries", injury.id)}>
              {prose.changeInjury}
            </Button>
            <Button size="xs" variant="default" onClick={() => onEdit("operations", operation.id)}>
              {prose.changeOperation}
            </Button>
            <Button
              size="xs"
              variant="default"
              onClick={() =>
                void apply("records.save", {
                  record: {
                    kind: "operations",
                    id: operation.id,
                    athlete: athlete.id,
                    content: { ...operation.content, sideConfirmed: operation.content.side },
                  },
                })
              }
            >
              {prose.bothAreRight}
            </Button>
          </div>
        </section>
      ))}
      {from.map((record) => (
        <section key={record.id} className="finding finding-note plates-question" aria-label={prose.bodyPartNotStated}>
          <p>{prose.namesNoBodyPart(recordName(record))}</p>
          <div className="plates-answers">
            <Button
              size="xs"
              variant="default"
              onClick={() => onEdit(record.kind === "injuries" ? "injuries" : "operations", record.id)}
            >
              {prose.stateIt}
            </Button>
          </div>
        </section>
      ))}
    </>
  );
}
