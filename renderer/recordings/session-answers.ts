import type { InvolvedSide } from "../../core/limb.ts";
import type { SessionResult } from "../../core/result.ts";
import { type EffusionGrade, effusionGrades, type SessionDescription } from "../../core/session.ts";
import type { SessionChange } from "../../electron/host-api.ts";

/** What the form about the session holds, as written. */
export interface WrittenSession {
  readonly code: string;
  readonly name: string;
  readonly involved: string;
  readonly injury: string;
  readonly date: string;
  readonly milestone: string;
  readonly pain: string;
  readonly effusion: string;
  /** The plate the left foot stood on, where that was stated. */
  readonly leftFoot: string;
}

export const involvedSides: readonly InvolvedSide[] = ["left", "right", "both", "none"];

/** The session as the form shows it; "" for what nobody stated. */
export function writtenSession(description: SessionDescription): WrittenSession {
  return {
    code: description.athlete?.code ?? "",
    name: description.athlete?.name ?? "",
    involved: description.involved ?? "",
    injury: description.injury ?? "",
    date: description.date ?? "",
    milestone: description.milestone ?? "",
    pain: description.pain === undefined ? "" : String(description.pain),
    effusion: description.effusion ?? "",
    leftFoot: description.plates?.find((each) => each.foot === "left")?.column ?? "",
  };
}

/** The names of the plates, where the session was recorded on two. */
export function plateNames({ trials }: SessionResult): readonly string[] {
  const onTwo = trials.filter((trial) => trial.plates.length === 2);
  return [...new Set(onTwo.flatMap((trial) => trial.plates.map((plate) => plate.name)))];
}

/** What was changed in the form, ready for the host; a sentence where it cannot be meant. Emptied fields are taken away. */
export function sessionChangeFrom(
  written: WrittenSession,
  description: SessionDescription,
  plates: readonly string[],
): { readonly change: SessionChange } | { readonly problem: string } {
  const before = writtenSession(description);
  const changed = (name: keyof WrittenSession) => written[name].trim() !== before[name];
  const text = (name: "injury" | "date" | "milestone") =>
    changed(name) ? { [name]: written[name].trim() === "" ? null : written[name].trim() } : {};
  const pain = Number(written.pain.replace(",", "."));
  if (written.pain.trim() !== "" && !(pain >= 0 && pain <= 10)) return { problem: "Pain is a number from 0 to 10." };
  const code = written.code.trim();
  const name = written.name.trim();
  if (code === "" && name !== "") return { problem: "An athlete needs a code; the name may stand beside it." };
  const involved = involvedSides.find((side) => side === written.involved) ?? null;
  const effusion: EffusionGrade | null = effusionGrades.find((grade) => grade === written.effusion) ?? null;
  const { name: _name, ...athlete } = description.athlete ?? { code };
  const change: SessionChange = {
    ...(changed("code") || changed("name")
      ? { athlete: code === "" ? null : { ...athlete, code, ...(name === "" ? {} : { name }) } }
      : {}),
    ...(changed("involved") ? { involved } : {}),
    ...text("injury"),
    ...text("date"),
    ...text("milestone"),
    ...(changed("pain") ? { pain: written.pain.trim() === "" ? null : pain } : {}),
    ...(changed("effusion") ? { effusion } : {}),
    ...(changed("leftFoot") ? { plates: feetOnPlates(written.leftFoot, plates) } : {}),
  };
  return Object.keys(change).length === 0 ? { problem: "Nothing was changed." } : { change };
}

function feetOnPlates(leftFoot: string, plates: readonly string[]): NonNullable<SessionChange["plates"]> | null {
  const rightFoot = plates.find((name) => name !== leftFoot);
  if (leftFoot === "" || rightFoot === undefined) return null;
  return [
    { column: leftFoot, foot: "left" },
    { column: rightFoot, foot: "right" },
  ];
}
