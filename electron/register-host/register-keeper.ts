import type { RecordingFile } from "../../core/recording/file.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { RegisterView } from "../boundary/register-view.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { describeSession } from "../register/describe-session.ts";
import type { RecordContent } from "../register/record-schemas.ts";
import type { Register } from "../register/register.ts";
import { descriptionOf } from "../register/session-conversion.ts";
import type { KeptChange, SessionKeeper } from "../workspace/session-keeper.ts";
import { readKeptSession } from "./kept-session.ts";

/** Whichever register is open, as far as keeping sessions in it needs it. */
interface OpenRegister {
  readonly register: Register;
  whole<Result>(work: () => Result): Result;
  view(): RegisterView;
}

/** Keeps the workspace's sessions in whichever register is open. */
export function registerKeeper(home: OpenRegister): SessionKeeper {
  return {
    describe: (id, description, change) => wrote(home.register, () => describe(home.register, id, description, change)),
    addRecording: (id, file, stated) => wrote(home.register, () => addRecording(home.register, id, file, stated)),
    replaceRecording: (id, file) => wrote(home.register, () => replaceRecording(home.register, id, file)),
    takeOut: (id, paths) => wrote(home.register, () => takeOut(home.register, id, paths)),
    read: (id, known) => readKeptSession(home.register, id, known),
    undo: (sequence) => home.register.writes.undo(sequence),
    redo: (sequence) => home.register.writes.redo(sequence),
    whole: (work) => home.whole(work),
    view: () => home.view(),
  };
}

/** The entry of the action that the work became; undefined where everything was there already. */
function wrote(register: Register, work: () => void): number | undefined {
  const { steps } = register.writes;
  work();
  return register.writes.stepsSince(steps).at(-1);
}

function describe(register: Register, id: string, description: SessionDescription, change: KeptChange): void {
  const described = register.reads.describedSession(id);
  if (described === undefined) throw noLongerThere();
  const before = descriptionOf(described);
  if (JSON.stringify(before.athlete) !== JSON.stringify(description.athlete)) {
    throw new RequestRefused(
      "The athlete of a session in the register is changed under Athletes, for all sessions at once. Nothing was changed.",
    );
  }
  if (JSON.stringify(before.operation) !== JSON.stringify(description.operation)) {
    throw new RequestRefused(
      "The operation of an athlete in the register is changed under Athletes, for all sessions at once. Nothing was changed.",
    );
  }
  describeSession(register, id, withoutWhatFollows(description, before, described.session.content), change);
}

/** What follows from injuries and operations goes on following from them: it is not kept in the session's record. */
function withoutWhatFollows(
  description: SessionDescription,
  before: SessionDescription,
  content: Pick<RecordContent<"sessions">, "involved" | "otherInjuries">,
): SessionDescription {
  const following = (["involved", "otherInjuries"] as const).filter(
    (key) => content[key] === undefined && JSON.stringify(description[key]) === JSON.stringify(before[key]),
  );
  const entries = Object.entries(description).filter(([key]) => !following.some((each) => each === key));
  return Object.fromEntries(entries) as SessionDescription;
}

/** Reads none of the session's other recordings: thousands may lie there, and each new one comes while people wait. */
function addRecording(
  register: Register,
  id: string,
  { path, bytes }: RecordingFile,
  stated: Parameters<SessionKeeper["addRecording"]>[2],
): void {
  const session = register.reads.record("sessions", id);
  if (session === undefined || session.binned) throw noLongerThere();
  register.writes.act("recordings imported", (changes) => {
    if (stated === undefined) return void changes.addRecording(id, path, bytes);
    const { file: _file, ...said } = stated.entry;
    changes.addRecording(id, path, bytes, { stated: said, position: stated.position });
  });
}

function replaceRecording(register: Register, id: string, { path, bytes, sha256 }: RecordingFile): void {
  const described = register.reads.describedSession(id);
  if (described === undefined) throw noLongerThere();
  const before = described.recordings.find(({ content }) => content.path === path);
  if (before?.content.sha256 === sha256) return;
  register.writes.act("recordings imported", (changes) => {
    const { stated, position } = before?.content ?? {};
    const added = changes.addRecording(id, path, bytes, {
      ...(stated !== undefined && { stated }),
      ...(position !== undefined && { position }),
    });
    if (before === undefined) return;
    // What was said stays with the file of this name; the earlier bytes lie in the bin.
    for (const trial of described.trials.filter(({ references }) => references.recording === before.id)) {
      changes.change("trials", trial.id, trial.content, { recording: added });
    }
    changes.moveToBin(before);
  });
}

/** What was said of their trials hangs on them: it is not shown while they lie in the bin, and is there again with them. */
function takeOut(register: Register, id: string, paths: readonly string[]): void {
  const described = register.reads.describedSession(id);
  if (described === undefined) throw noLongerThere();
  const chosen = described.recordings.filter(({ content }) => paths.includes(content.path));
  if (chosen.length < new Set(paths).size) throw noLongerThere();
  register.writes.moveToBin(...chosen);
}

function noLongerThere(): RequestRefused {
  return new RequestRefused("This session is no longer in the register; nothing was changed.");
}
