import { answeredCautions } from "../../core/gate/answered-cautions.ts";
import { kneeDay } from "../../core/gate/knee-day.ts";
import { writtenCautions } from "../cautions/add-cautions.ts";
import type { Register } from "./register.ts";
import { descriptionOf } from "./session-conversion.ts";

/**
 * States of a session of the register that what was not asked is not known; says whether anything was open.
 * @throws RequestRefused for a session of today, or of no day
 */
export function stateNotKnown(register: Register, session: string, by: string): boolean {
  const described = register.reads.describedSession(session);
  if (described === undefined) return false;
  const description = descriptionOf(described);
  const { notKnown, openAtFirst, openAtChange } = answeredCautions(description, kneeDay(description));
  if (notKnown !== undefined || openAtFirst.length + openAtChange.length === 0) return false;
  const stated = { answers: { notKnown: true, by } } as const;
  const { answers = [] } = writtenCautions(stated, description.date, register.circumstances.now());
  const { content } = described.session;
  register.writes.act("cautions added", (changes) =>
    changes.change("sessions", session, {
      ...content,
      cautionAnswers: [...(content.cautionAnswers ?? []), ...answers],
    }),
  );
  return true;
}
