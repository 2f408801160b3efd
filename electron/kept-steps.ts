import { type ReadRecording, type SessionStatements, trialKey } from "../core/analysis.ts";
import { entriesOfFile } from "../core/entries-by-file.ts";
import { analyzeDrafts, type DraftedFile, draftFile, type FileSteps, type FileTrial } from "../core/file-trials.ts";
import { isSameShape } from "../core/recording/same-shape.ts";
import type { Settings } from "../core/settings.ts";
import type { TrialWeightContext } from "../core/weight/session-weighing.ts";
import { joinPath } from "./recording-names.ts";
import { type FileGuard, noGuard } from "./worker/file-guard.ts";

interface Drafted {
  readonly key: string;
  readonly drafted: DraftedFile;
}

interface Analyzed {
  readonly key: string;
  readonly trials: readonly FileTrial[];
}

/** Bytes of files whose drafts are kept; those not used for longest go first. */
const keptByteLimit = 256 * 1024 * 1024;

/**
 * The steps of an analysis that concern one file alone, with their last outcome kept for every file: what is said about
 * one trial makes the program read and cut one file again and not five hundred. A step is only ever given what its key
 * was made from, so that nothing kept can be out of date.
 */
export class KeptSteps implements FileSteps {
  readonly #byteLimit: number;
  /** Stands over the work on each file. */
  guard: FileGuard = noGuard;
  /** In the order of their last use. */
  readonly #drafted = new Map<string, Drafted>();
  readonly #analyzed = new WeakMap<DraftedFile, Analyzed>();
  readonly #settingsNumbers = new WeakMap<Settings, number>();
  readonly #settingsTexts = new Map<string, number>();
  #keptBytes = 0;

  constructor(byteLimit = keptByteLimit) {
    this.#byteLimit = byteLimit;
  }

  readonly draftFile: FileSteps["draftFile"] = (file, session, settings) => {
    const place = `${session.folder}\n${file.path}`;
    const kept = this.#drafted.get(place);
    if (kept !== undefined) {
      const { read } = kept.drafted;
      const isSame = read.file.sha256 === file.sha256;
      if (isSame && kept.key === this.#draftKey(statementsAbout(session, read), settings)) {
        this.#drafted.delete(place);
        this.#drafted.set(place, kept);
        return kept.drafted;
      }
      this.#drop(place);
    }
    this.guard.begin({ path: joinPath(session.folder, file.path), sha256: file.sha256 });
    const drafted = draftFile(file, statementsAbout(session, { file }), settings);
    this.#keep(place, { key: this.#draftKey(statementsAbout(session, drafted.read), settings), drafted });
    return drafted;
  };

  readonly analyzeDrafts: FileSteps["analyzeDrafts"] = (drafted, weight, session, settings) => {
    const own = statementsAboutMass(session);
    const ownWeight = weightOfTrials(weight, drafted);
    const key = JSON.stringify([ownWeight, own.description, own.stated, this.#numberOf(settings)]);
    const kept = this.#analyzed.get(drafted);
    if (kept?.key === key) return kept.trials;
    const { path, sha256 } = drafted.read.file;
    this.guard.begin({ path: joinPath(session.folder, path), sha256 });
    const trials = analyzeDrafts(drafted, ownWeight, own, settings);
    this.#analyzed.set(drafted, { key, trials });
    return trials;
  };

  /** Forgets every file. */
  clear(): void {
    this.#drafted.clear();
    this.#keptBytes = 0;
  }

  #draftKey({ description, stated, layouts }: SessionStatements, settings: Settings): string {
    return JSON.stringify([description, stated, layouts, this.#numberOf(settings)]);
  }

  #keep(place: string, drafted: Drafted): void {
    this.#drafted.set(place, drafted);
    this.#keptBytes += byteLengthOf(drafted);
    for (const oldest of this.#drafted.keys()) {
      if (this.#keptBytes <= this.#byteLimit || oldest === place) return;
      this.#drop(oldest);
    }
  }

  #drop(place: string): void {
    const dropped = this.#drafted.get(place);
    if (dropped === undefined) return;
    this.#keptBytes -= byteLengthOf(dropped);
    this.#drafted.delete(place);
  }

  /** A number of its own for each content that settings have had, as the content itself is long to compare and keep. */
  #numberOf(settings: Settings): number {
    const known = this.#settingsNumbers.get(settings);
    if (known !== undefined) return known;
    const text = JSON.stringify(settings);
    const number = this.#settingsTexts.get(text) ?? this.#settingsTexts.size;
    this.#settingsTexts.set(text, number);
    this.#settingsNumbers.set(settings, number);
    return number;
  }
}

function byteLengthOf({ drafted }: Drafted): number {
  return drafted.read.file.bytes.byteLength;
}

/**
 * What is said about one file alone and about the whole session, as far as it decides how the file is read and cut.
 * Once the file was read, only the saved layouts of its shape count: no other can be applied to it.
 */
function statementsAbout(session: SessionStatements, read: Pick<ReadRecording, "file" | "reading">): SessionStatements {
  const { massKg, dropHeightMetres, leadingLeg, plates } = session.description;
  const own = entriesOfFile(session.description, read.file.path);
  const { reading } = read;
  const layouts = (session.layouts ?? []).filter(
    ({ shape }) => reading === undefined || (reading.kind === "delimited" && isSameShape(shape, reading.shape)),
  );
  return {
    folder: "",
    descriptionFindings: [],
    stated: session.stated,
    description: {
      ...(massKg === undefined ? {} : { massKg }),
      ...(dropHeightMetres === undefined ? {} : { dropHeightMetres }),
      ...(leadingLeg === undefined ? {} : { leadingLeg }),
      ...(plates === undefined ? {} : { plates }),
      ...(own.length === 0 ? {} : { files: own }),
    },
    layouts,
  };
}

/** What the other trials of a session say about the weight of one file's trials: most have standing of their own. */
function weightOfTrials(weight: TrialWeightContext, { drafts }: DraftedFile): TrialWeightContext {
  const keys = drafts.map(({ file, trial }) => trialKey(file.path, trial));
  const ofTrials = <Value>(record: Readonly<Record<string, Value>>): Readonly<Record<string, Value>> =>
    Object.fromEntries(keys.flatMap((key) => (record[key] === undefined ? [] : [[key, record[key]]])));
  const { notPooled } = weight;
  return {
    predictions: ofTrials(weight.predictions),
    borneOut: ofTrials(weight.borneOut),
    ...(notPooled === undefined ? {} : { notPooled }),
  };
}

/** What events and measures are made from beside the drafts, weights from elsewhere and the settings. */
function statementsAboutMass({ stated, description: { massKg } }: SessionStatements): SessionStatements {
  return { folder: "", descriptionFindings: [], stated, description: massKg === undefined ? {} : { massKg } };
}
