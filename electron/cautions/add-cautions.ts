import { closuresToOpen } from "../../core/gate/closures-to-open.ts";
import type { CautionAnswers } from "../../core/stated/cautions-schema.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { CautionAddition, WrittenCautions } from "./caution-addition.ts";

/** A time of this machine with its zone, to the second: "2026-10-13T09:42:10+02:00". */
export function writtenTime(now: Date): string {
  const minutes = -now.getTimezoneOffset();
  const local = new Date(now.getTime() + minutes * 60_000).toISOString().slice(0, 19);
  const two = (value: number) => String(Math.floor(Math.abs(value))).padStart(2, "0");
  return `${local}${minutes < 0 ? "-" : "+"}${two(minutes / 60)}:${two(minutes % 60)}`;
}

/**
 * An addition with the time of its writing.
 * @param date the session's day: of a live session nobody can state that its cautions are not known
 * @throws RequestRefused where it cannot be meant
 */
export function writtenCautions(addition: CautionAddition, date: string | undefined, now: Date): WrittenCautions {
  const written = writtenTime(now);
  const { answers, response, readings, opening } = addition;
  if (answers !== undefined && "notKnown" in answers && (date === undefined || date >= written.slice(0, 10))) {
    throw new RequestRefused(
      date === undefined
        ? "State the day of the session first: of today's session nobody can state that the cautions are not known."
        : "Of today's session nobody can state that the cautions are not known: ask them now. This statement was not kept.",
    );
  }
  const empty = readings?.find(({ pain, effusion }) => pain === undefined && effusion === undefined);
  if (empty !== undefined) throw new RequestRefused("A reading has pain, effusion or both. Nothing was kept.");
  const all: readonly CautionAnswers[] = [
    ...(response === undefined ? [] : [{ asked: "response" as const, ...response, answers: {}, written }]),
    ...(answers === undefined ? [] : [{ ...answers, written }]),
  ];
  return {
    ...(all.length > 0 && { answers: all }),
    ...(readings !== undefined && { readings: readings.map((each) => ({ ...each, written })) }),
    ...(opening !== undefined && { opening: { ...opening, written } }),
  };
}

/**
 * The description with more answers, readings or an opening; nothing that was there is altered.
 * @throws RequestRefused for an opening that lacks the doctor it needs
 */
export function withCautions(description: SessionDescription, added: WrittenCautions): SessionDescription {
  const { answers = [], readings = [], opening } = added;
  const { cautions } = description;
  if (opening !== undefined) {
    const needing = closuresToOpen(opening).filter(({ needsDoctor }) => needsDoctor);
    if (needing.length > 0 && opening.doctor === undefined) {
      throw new RequestRefused(
        `Say which doctor agreed, and when: ${needing.map(({ words }) => words).join(", ")}. Nothing was kept.`,
      );
    }
  }
  return {
    ...description,
    ...(answers.length > 0 && { cautions: { ...cautions, answers: [...(cautions?.answers ?? []), ...answers] } }),
    ...(readings.length > 0 && { readings: [...(description.readings ?? []), ...readings] }),
    ...(opening !== undefined && { gateOpenings: [...(description.gateOpenings ?? []), opening] }),
  };
}
