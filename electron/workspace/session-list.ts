import { answeredCautions } from "../../core/gate/answered-cautions.ts";
import { kneeDay } from "../../core/gate/knee-day.ts";
import type { Workspace } from "../boundary/workspace-view.ts";
import { comparePaths } from "../files/recording-names.ts";
import type { StoredSession } from "../files/stored-session.ts";

/**
 * The sessions as a list to choose from: by athlete, then date, then folder; undescribed ones by folder, last.
 * @param today on this machine's calendar: of sessions that are over it is said whether their cautions lack answers
 */
export function listSessions(sessions: Iterable<StoredSession>, today = ""): Workspace["sessions"] {
  return [...sessions].toSorted(compareSessions).map((session) => ({
    folder: session.folder,
    title: sessionTitle(session),
    subtitle: sessionSubtitle(session),
    ...(lacksAnswers(session, today) && { lacksAnswers: true as const }),
  }));
}

function lacksAnswers({ stated: { description } }: StoredSession, today: string): boolean {
  const isOver = description.date !== undefined && description.date < today;
  return isOver && answeredCautions(description, kneeDay(description)).openAtFirst.length > 0;
}

/** The session that shows most: the latest one of an athlete with an involved side, else the first of the list. */
export function sessionToBeginWith(sessions: readonly StoredSession[]): StoredSession | undefined {
  const dateOf = ({ stated: { description } }: StoredSession) => description.date ?? "";
  const injured = sessions.filter(({ stated: { description } }) =>
    ["left", "right"].includes(description.involved ?? ""),
  );
  return (
    injured.toSorted((first, second) => comparePaths(dateOf(second), dateOf(first)))[0] ??
    [...sessions].toSorted(compareSessions)[0]
  );
}

function compareSessions(first: StoredSession, second: StoredSession): number {
  const keys = ({ folder, stated: { description } }: StoredSession) => [
    description.athlete === undefined ? "1" : "0",
    description.athlete?.code ?? "",
    description.date ?? "9999",
    folder,
  ];
  const [left, right] = [keys(first), keys(second)];
  for (const [index, key] of left.entries()) {
    const order = comparePaths(key, right[index] ?? "");
    if (order !== 0) return order;
  }
  return 0;
}

function sessionTitle({ folder, stated: { description } }: StoredSession): string {
  const { athlete } = description;
  if (athlete !== undefined) return athlete.name ?? athlete.code;
  return folder === "" ? "Loose recordings" : folder;
}

function sessionSubtitle({ files, stated: { description } }: StoredSession): string {
  const facts = [description.milestone, description.date].filter((each) => each !== undefined);
  return facts.length > 0 ? facts.join(", ") : `${files.length} ${files.length === 1 ? "recording" : "recordings"}`;
}
