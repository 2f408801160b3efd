import { Button } from "@mantine/core";
import { isFromBefore } from "../../core/sides/involvement.ts";
import type { AthletePage } from "../../electron/register/register-views.ts";
import { today } from "../shell/dates.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { asksWhetherInjured, operationsOnOtherSide, recordName } from "./injury-doubts.ts";

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
        <section className="caution finding plates-question" aria-label="Is anybody injured?">
          <p>
            Nobody has said whether a knee is involved, so sides are not compared as involved and uninvolved. Is there
            an injury, or is nobody injured?
          </p>
          <div className="plates-answers">
            <Button size="xs" variant="default" onClick={onAdd}>
              Add an injury
            </Button>
            <Button size="xs" variant="default" onClick={nobodyInjured}>
              Nobody is injured
            </Button>
          </div>
        </section>
      )}
      {operationsOnOtherSide(page).map(({ operation, injury }) => (
        <section
          key={operation.id}
          className="caution finding plates-question"
          aria-label="Different sides of injury and operation"
        >
          <p>
            The injury ({recordName(injury)}) is on the {injury.content.side}, the operation ({recordName(operation)})
            on the {operation.content.side}. Is one of the sides wrong?
          </p>
          <div className="plates-answers">
            <Button size="xs" variant="default" onClick={() => onEdit("injuries", injury.id)}>
              Change the injury
            </Button>
            <Button size="xs" variant="default" onClick={() => onEdit("operations", operation.id)}>
              Change the operation
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
              Both are right
            </Button>
          </div>
        </section>
      ))}
      {from.map((record) => (
        <section key={record.id} className="finding finding-note plates-question" aria-label="Body part not stated">
          <p>
            {recordName(record)} names no body part: it counts as an involved knee, as every injury did before. Another
            part, or an injury of the other leg that involves nothing, is to be stated.
          </p>
          <div className="plates-answers">
            <Button
              size="xs"
              variant="default"
              onClick={() => onEdit(record.kind === "injuries" ? "injuries" : "operations", record.id)}
            >
              State it
            </Button>
          </div>
        </section>
      ))}
    </>
  );
}
