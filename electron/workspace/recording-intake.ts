import { listInWords } from "../../core/ground/plain-words.ts";
import type { RecordingFile } from "../../core/recording/file.ts";
import { leftAsideMessage } from "../../core/recording/left-aside-words.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { SessionAnalysis } from "../../core/session/session-analysis.ts";
import { parseSessionFile } from "../../core/stated/session-file.ts";
import { english } from "../../core/words/english.ts";
import { tellFinding } from "../../core/words/finding-in-words.ts";
import type { HostApi } from "../boundary/host-api.ts";
import type { TakenFile } from "../boundary/recording-replies.ts";
import type { RecordingAnswers } from "../boundary/stated-changes.ts";
import { isNamed, otherKindOfFile } from "../files/left-aside/other-kind.ts";
import { joinPath, sessionFileName, splitPath } from "../files/recording-names.ts";
import type { Stated } from "../files/stored-session.ts";
import { copiesOf, recordingFile, type StoredSession, withFile } from "../files/stored-session.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { putAsideReason } from "../threads/file-guard.ts";
import type { Analyses } from "./analyses.ts";
import { BatchPlaces, namesakes } from "./batch-places.ts";
import type { HeldWorkspace } from "./held-workspace.ts";
import type { OpenSessions } from "./open-sessions.ts";
import { viewRecording } from "./recording-view.ts";
import { isSameSession } from "./same-session.ts";

/** Most bytes of recordings held at a time. */
const totalByteLimit = 1024 * 1024 * 1024;

/** What is to be stated of a recording as it comes in, from the result of it alone or of the whole session. */
export type AnswerOnIntake = (alone: SessionResult, whole: () => SessionResult) => RecordingAnswers;

const nothingStated: Stated = { description: {}, findings: [] };

/** How recordings come in: one file at a time, in batches that never run into what was open before. */
export class RecordingIntake {
  readonly #open: OpenSessions;
  readonly #analyses: Analyses;
  readonly #batches = new Map<string, BatchPlaces>();

  constructor(open: OpenSessions, analyses: Analyses) {
    this.#open = open;
    this.#analyses = analyses;
  }

  /** The batches as they are now, to come back to. @returns brings them back */
  snapshot(): () => void {
    const batches = [...this.#batches].map(([name, places]) => [name, places.copy()] as const);
    return () => {
      this.#batches.clear();
      for (const [name, places] of batches) this.#batches.set(name, places);
    };
  }

  /** Where each batch that is coming in puts its folders. */
  get held(): HeldWorkspace["batches"] {
    return [...this.#batches].map(([name, places]) => [name, places.all]);
  }

  takeOver(batches: HeldWorkspace["batches"]): void {
    this.#batches.clear();
    for (const [name, places] of batches) this.#batches.set(name, new BatchPlaces(places));
  }

  /** Forgets the batches. */
  clear(): void {
    this.#batches.clear();
  }

  /**
   * Takes one file in.
   * @param batch files of one batch never run into sessions that were open before; `endBatch` joins what belongs together
   * @param answer what to state of it on the way
   */
  add(path: string, bytes: Uint8Array, batch = "", answer?: AnswerOnIntake): TakenFile {
    const { folder: asked, name } = splitPath(path);
    const isDescription = name === sessionFileName;
    const nothing = { folder: asked, outcome: "refused", sameAs: [] } as const;
    const kind = isDescription || this.#isNamed(asked, name, batch) ? undefined : otherKindOfFile(name, bytes);
    if (kind !== undefined) {
      return { folder: asked, outcome: "left aside", kind, message: leftAsideMessage(kind), sameAs: [] };
    }
    if (!isDescription && this.#open.byteLength + bytes.byteLength > totalByteLimit) {
      return { ...nothing, message: `${name} was left out: more than 1 GB of recordings is open.` };
    }
    const folder = batch === "" ? asked : this.#batchOf(batch).placeOf(asked, (each) => this.#open.has(each));
    const before = this.#open.find(folder) ?? { folder, files: [], stated: nothingStated };
    if (this.#open.all.length === 0) this.#open.shown = folder;
    return isDescription
      ? this.#addDescription(before, bytes)
      : this.#addRecording(before, recordingFile(name, bytes), answer);
  }

  /** Ends a batch: what came in under the name of an open session joins it where it is the same session. */
  endBatch(batch: string): HostApi["recordings.endBatch"]["reply"] {
    const places = this.#batches.get(batch);
    const moved = (places?.all ?? []).filter(([folder, place]) => folder !== place && this.#open.has(place));
    return {
      places: moved.map(([folder, place]) => {
        const incoming = this.#open.get(place);
        const same = namesakes(folder, this.#open.all).find(
          (open) => open.folder !== place && isSameSession(open, incoming),
        );
        // Decisions that were made about the recordings meanwhile can be taken back only while their session is there.
        if (same === undefined || this.#open.history.concerns(place))
          return { folder, session: place, message: besideWords(folder, place) };
        this.#join(incoming, same.folder);
        places?.settle(folder, same.folder);
        return { folder, session: same.folder, message: "" };
      }),
    };
  }

  /** The session the file goes to calls it a recording. */
  #isNamed(asked: string, name: string, batch: string): boolean {
    const place = batch === "" ? asked : this.#batches.get(batch)?.all.find(([folder]) => folder === asked)?.[1];
    const session = place === undefined ? undefined : this.#open.find(place);
    return session !== undefined && isNamed(session.stated.description, name);
  }

  #addRecording(before: StoredSession, file: RecordingFile, answer: AnswerOnIntake = () => ({})): TakenFile {
    const { folder } = before;
    if (this.#analyses.guard.isPutAside(file)) {
      return { folder, outcome: "refused", message: putAsideWords(joinPath(folder, file.path)), sameAs: [] };
    }
    const replaced = before.files.find((each) => each.path === file.path);
    const copy = before.files.find((each) => each.path !== file.path && each.sha256 === file.sha256);
    const session = withFile(before, file);
    const alone = this.#analyses.ofFile(session, file);
    const answers = answer(alone.result, () => this.#analyses.of(session).result);
    const refusal = this.#bringIn(before, session, file, answers);
    if (refusal !== undefined) return { folder, outcome: "refused", message: refusal, sameAs: [] };
    const sameAs = copiesOf(file, folder, this.#open.all);
    if (copy !== undefined) {
      const message = `This is the same recording as ${copy.path}, byte for byte; it counts once.`;
      return { folder, outcome: "refused", message, sameAs };
    }
    const { outcome, message } = lookAt(alone, file);
    const words = [
      message,
      ...(replaced === undefined || replaced.sha256 === file.sha256
        ? []
        : ["It took the place of another recording of the same name."]),
      ...(sameAs.length === 0 ? [] : [`The same recording is open as ${listInWords(sameAs)}.`]),
    ];
    return { folder, outcome, message: words.join(" "), sameAs };
  }

  #addDescription(session: StoredSession, bytes: Uint8Array): TakenFile {
    const { folder } = session;
    if (session.keptAs !== undefined) {
      const message = `${sessionFileName} was left out: what is said about a session of the register is changed on the screens.`;
      return { folder, outcome: "refused", message, sameAs: [] };
    }
    const { sha256 } = recordingFile(sessionFileName, bytes);
    const path = joinPath(folder, sessionFileName);
    if (this.#analyses.guard.isPutAside({ sha256 }))
      return { folder, outcome: "refused", message: putAsideWords(path), sameAs: [] };
    this.#analyses.guard.begin({ path, sha256 });
    const { description, findings } = parseSessionFile(bytes);
    this.#open.describe(session, { description, findings });
    const first = findings[0];
    const message = first === undefined ? "Describes the session." : tellFinding(first, english);
    return { folder, outcome: "session", message, sameAs: [] };
  }

  /** @returns why the register did not take the recording; undefined where it did, or where the session is not kept */
  #bringIn(
    before: StoredSession,
    session: StoredSession,
    file: RecordingFile,
    answers: RecordingAnswers,
  ): string | undefined {
    try {
      this.#open.bringIn(before, session, file, answers);
      return undefined;
    } catch (error) {
      if (error instanceof RequestRefused) return error.message;
      throw error;
    }
  }

  /** Moves what came in beside a session of its name into it. */
  #join(incoming: StoredSession, folder: string): void {
    const open = this.#open.get(folder);
    for (const file of incoming.files) this.#open.keepRecording(open, file);
    const joined = incoming.files.reduce(withFile, open);
    this.#open.remove(incoming.folder);
    this.#open.put(joined);
    const { description } = incoming.stated;
    const isNews = JSON.stringify(description) !== JSON.stringify(open.stated.description);
    // What the register says of its sessions stands.
    if (incoming.stated !== nothingStated && isNews && open.keptAs === undefined)
      this.#open.describe(joined, incoming.stated);
    if (this.#open.shown === incoming.folder) this.#open.shown = folder;
  }

  #batchOf(batch: string): BatchPlaces {
    const places = this.#batches.get(batch) ?? new BatchPlaces();
    this.#batches.set(batch, places);
    return places;
  }
}

function putAsideWords(path: string): string {
  return `${path} was left out because it ${putAsideReason}.`;
}

function besideWords(folder: string, place: string): string {
  return folder === ""
    ? `Other recordings of the same names are open already; these stand beside them as “${place}”.`
    : `Another session “${folder}” is open already; this one stands beside it as “${place}”.`;
}

/** How one file alone stands, which is quick to say; the session as a whole is analysed when it is read. */
function lookAt(alone: SessionAnalysis, file: RecordingFile): Pick<TakenFile, "outcome" | "message"> {
  const view = viewRecording(file, alone, []);
  const refusal = view.findings.find((each) => each.severity === "refusal");
  const message =
    refusal === undefined ? `${view.trials} ${view.trials === 1 ? "trial" : "trials"}.` : tellFinding(refusal, english);
  return { outcome: view.outcome, message };
}
