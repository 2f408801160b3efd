import type { SessionResult } from "../../core/result/session-result.ts";
import { concludeSession } from "../../core/session/conclude-session.ts";
import { enteredNewtons, sessionSettings } from "../../core/session/file-trials.ts";
import { withoutRepeats } from "../../core/session/repeated-recordings.ts";
import type { SessionInput, SessionStatements } from "../../core/session/session-input.ts";
import type { Settings } from "../../core/settings/settings.ts";
import { type TrialWeightContext, weighSession } from "../../core/weight/session-weighing.ts";
import { type ListedSession, readDescription } from "../files/read-folder.ts";
import type { Crew, CrewMember } from "./crew.ts";
import type { FirstPass } from "./session-work.ts";

/** How far a session has come: each file is passed twice. */
export interface SessionProgress {
  readonly passes: number;
  readonly allPasses: number;
}

/** Most files handed to a member at a time: enough to keep it busy, few enough that the last ones end together. */
const mostFilesAtATime = 8;
/** Everybody gets this many portions at least, where there are as many files: a few files are shared out one by one. */
const portionsEach = 4;

/**
 * Analyses a listed session with everybody of the crew, reading each file where it is worked on. The result is that of
 * `analyzeSession` over the same files, bit for bit, however many share the work.
 */
export async function analyzeListed(
  listed: ListedSession,
  said: Pick<SessionInput, "stated" | "layouts">,
  settings: Settings,
  crew: Crew,
  onProgress: (progress: SessionProgress) => void = () => {},
): Promise<SessionResult> {
  const { folder, directory, names } = listed;
  const statements: SessionStatements = { folder, ...readDescription(listed), ...said };
  const own = sessionSettings(statements, settings);
  // Nobody waits for the others: who has opened the session begins with the files at once.
  const opened = everybody(crew, (member) =>
    member.ask({ kind: "open", session: { directory, statements, settings } }),
  );
  let passes = 0;
  const passed = (files: number): void => {
    passes += files;
    onProgress({ passes, allPasses: 2 * names.length });
  };

  // Each file is cut and weighed, and leaves behind only what the session's weight is made from.
  const firstPass = share(crew, names, async (member, paths) => {
    const answer = await member.ask({ kind: "weigh", paths });
    passed(paths.length);
    return answer;
  });
  const [first] = await Promise.all([firstPass, opened]);
  const unreadable = first.items.flatMap((each) => (each.kind === "unreadable" ? [each] : []));
  const { files, repeated } = withoutRepeats(first.items.filter(isRecording));
  const weighing = weighSession(
    files.flatMap(({ weighed }) => weighed),
    enteredNewtons(statements, own),
    own,
  );
  const { predictions, borneOut, notPooled } = weighing;
  const weight: TrialWeightContext = { predictions, borneOut, ...(notPooled === undefined ? {} : { notPooled }) };

  // The same member takes a file again, because it may have kept its drafts.
  const recordings = files.map(({ path, sha256 }) => ({ path, sha256 }));
  const second = await share(
    crew,
    recordings,
    async (member, some) => {
      const answer = await member.ask({ kind: "analyze", files: some, weight });
      passed(some.length);
      return answer;
    },
    ({ path }) => first.doneBy.get(path),
  );
  const trials = new Map(second.items.map((each) => [each.path, each.trials]));
  const analyzed = files.flatMap(({ path }) => trials.get(path) ?? []);
  return concludeSession(
    statements,
    {
      analyzed,
      weighing,
      unreadable: [...listed.unreadable, ...unreadable.map(({ path, reason }) => ({ path, reason }))],
      repeated,
    },
    own,
  );
}

function isRecording(pass: FirstPass): pass is FirstPass & { readonly kind: "recording" } {
  return pass.kind === "recording";
}

async function everybody(crew: Crew, ask: (member: CrewMember) => Promise<unknown>): Promise<void> {
  await Promise.all(crew.members.map(ask));
}

/**
 * Shares work out in small portions: everybody takes the next one when done with the last. Answers come back in the
 * order of the work, with who did what.
 * @param wanted who should do an item again; items without such a member go to whoever is free
 */
async function share<Item, Answer extends { readonly path: string }>(
  crew: Crew,
  work: readonly Item[],
  ask: (member: CrewMember, portion: readonly Item[]) => Promise<readonly Answer[]>,
  wanted?: (item: Item) => CrewMember | undefined,
): Promise<{ readonly items: readonly Answer[]; readonly doneBy: ReadonlyMap<string, CrewMember> }> {
  const queues = queuesOf(crew, work, wanted);
  const answers = new Map<number, readonly Answer[]>();
  const doneBy = new Map<string, CrewMember>();
  await Promise.all(
    crew.members.map(async (member, position) => {
      const queue = queues[position] ?? [];
      for (let portion = queue.shift(); portion !== undefined; portion = queue.shift()) {
        const answer = await ask(member, portion.items);
        for (const { path } of answer) doneBy.set(path, member);
        answers.set(portion.at, answer);
      }
    }),
  );
  const inOrder = [...answers].toSorted(([one], [other]) => one - other);
  return { items: inOrder.flatMap(([, answer]) => answer), doneBy };
}

interface Portion<Item> {
  readonly at: number;
  readonly items: readonly Item[];
}

/** One queue that everybody takes from, or one for each member where items want to go to theirs. */
function queuesOf<Item>(
  crew: Crew,
  work: readonly Item[],
  wanted: ((item: Item) => CrewMember | undefined) | undefined,
): readonly Portion<Item>[][] {
  const fair = Math.ceil(work.length / (portionsEach * crew.members.length));
  const filesAtATime = Math.max(1, Math.min(mostFilesAtATime, fair));
  const portions = (items: readonly { readonly item: Item; readonly at: number }[]): Portion<Item>[] =>
    Array.from({ length: Math.ceil(items.length / filesAtATime) }, (_, index) => {
      const some = items.slice(index * filesAtATime, (index + 1) * filesAtATime);
      return { at: some[0]?.at ?? 0, items: some.map(({ item }) => item) };
    });
  const all = work.map((item, at) => ({ item, at }));
  if (wanted === undefined) {
    const shared = portions(all);
    return crew.members.map(() => shared);
  }
  return crew.members.map((member) => portions(all.filter(({ item }) => wanted(item) === member)));
}
