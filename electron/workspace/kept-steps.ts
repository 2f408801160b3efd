import { trialKey } from "../../core/ground/trial-key.ts";
import type { RecordingFile } from "../../core/recording/file.ts";
import type { ReadRecording } from "../../core/recording/recording-as-read.ts";
import { isSameShape } from "../../core/recording/same-shape.ts";
import type { FileSteps } from "../../core/session/file-mapper.ts";
import { analyzeDrafts, type DraftedFile, draftFile, type FileTrial } from "../../core/session/file-trials.ts";
import type { SessionStatements } from "../../core/session/session-input.ts";
import type { Settings } from "../../core/settings/settings.ts";
import { entriesOfFile } from "../../core/stated/entries-by-file.ts";
import type { TrialWeightContext } from "../../core/weight/session-weighing.ts";
import { joinPath } from "../files/recording-names.ts";
import { type FileGuard, noGuard } from "../threads/file-guard.ts";
import { heldBytes } from "./held-bytes.ts";
import { DraftWithoutCurves, TrialWithoutCurves } from "./without-curves.ts";

interface Drafted {
  readonly key: string;
  readonly drafted: DraftedFile;
}

interface Analyzed {
  readonly key: string;
  readonly trials: readonly FileTrial[];
}

interface Whole {
  readonly drafted: DraftedFile;
  readonly byteLength: number;
}

/** Bytes of samples that are kept; those of files not used for longest go first, and are made again from their bytes. */
const keptByteLimit = 96 * 1024 * 1024;

/**
 * The steps of an analysis that concern one file alone, with their last outcome kept for every file that is open: what
 * is said about one trial makes the program read and cut one file again and not five hundred. Samples and curves are
 * kept for the files last used alone. A step is only ever given what its key was made from, so that nothing kept can be
 * out of date.
 */
export class KeptSteps implements FileSteps {
  readonly #byteLimit: number;
  /** Stands over the work on each file. */
  guard: FileGuard = noGuard;
  #drafted = new WeakMap<RecordingFile, Drafted>();
  readonly #analyzed = new WeakMap<DraftedFile, Analyzed>();
  /** Files with their samples by what is kept of them, in the order of their last use. */
  readonly #wholes = new Map<DraftedFile, Whole>();
  /** Trials with their curves, as long as the samples of their file are kept. */
  readonly #curves = new WeakMap<DraftedFile, Analyzed>();
  readonly #settingsNumbers = new WeakMap<Settings, number>();
  readonly #settingsTexts = new Map<string, number>();
  #keptBytes = 0;

  constructor(byteLimit = keptByteLimit) {
    this.#byteLimit = byteLimit;
  }

  readonly draftFile: FileSteps["draftFile"] = (file, session, settings) => {
    const kept = this.#drafted.get(file);
    if (kept !== undefined) {
      if (kept.key === this.#draftKey(statementsAbout(session, kept.drafted.read), settings)) return kept.drafted;
      this.#drop(kept.drafted);
    }
    const about = statementsAbout(session, { file });
    const draft = () => {
      this.guard.begin({ path: joinPath(session.folder, file.path), sha256: file.sha256 });
      return draftFile(file, about, settings);
    };
    const whole = draft();
    const drafted: DraftedFile = new DraftWithoutCurves(whole, () => this.#wholeOf(drafted, draft));
    this.#drafted.set(file, { key: this.#draftKey(statementsAbout(session, whole.read), settings), drafted });
    this.#keep(drafted, whole);
    return drafted;
  };

  readonly analyzeDrafts: FileSteps["analyzeDrafts"] = (drafted, weight, session, settings) => {
    const own = statementsAboutMass(session);
    const ownWeight = weightOfTrials(weight, drafted);
    const key = JSON.stringify([ownWeight, own.description, own.stated, this.#numberOf(settings)]);
    const kept = this.#analyzed.get(drafted);
    if (kept?.key === key) return kept.trials;
    const { path, sha256 } = drafted;
    const withCurves = (): readonly FileTrial[] => {
      const { drafts } = drafted;
      const whole = this.#wholes.get(drafted);
      const known = whole && this.#curves.get(whole.drafted);
      if (known?.key === key) return known.trials;
      this.guard.begin({ path: joinPath(session.folder, path), sha256 });
      const made = analyzeDrafts({ drafts }, ownWeight, own, settings);
      if (whole !== undefined) {
        this.#curves.set(whole.drafted, { key, trials: made });
        this.#keep(drafted, whole.drafted);
      }
      return made;
    };
    const trials = withCurves().map((trial, at) => new TrialWithoutCurves(trial, () => withCurves()[at]?.jump));
    this.#analyzed.set(drafted, { key, trials });
    return trials;
  };

  /** Forgets every file. */
  clear(): void {
    this.#drafted = new WeakMap();
    this.#wholes.clear();
    this.#keptBytes = 0;
  }

  #draftKey({ description, stated, layouts }: SessionStatements, settings: Settings): string {
    return JSON.stringify([description, stated, layouts, this.#numberOf(settings)]);
  }

  #wholeOf(drafted: DraftedFile, draft: () => DraftedFile): DraftedFile {
    const kept = this.#wholes.get(drafted);
    if (kept === undefined) {
      const whole = draft();
      this.#keep(drafted, whole);
      return whole;
    }
    this.#wholes.delete(drafted);
    this.#wholes.set(drafted, kept);
    return kept.drafted;
  }

  #keep(drafted: DraftedFile, whole: DraftedFile): void {
    this.#drop(drafted);
    const byteLength = heldBytes([whole, this.#curves.get(whole)]);
    this.#wholes.set(drafted, { drafted: whole, byteLength });
    this.#keptBytes += byteLength;
    for (const oldest of this.#wholes.keys()) {
      if (this.#keptBytes <= this.#byteLimit || oldest === drafted) return;
      this.#drop(oldest);
    }
  }

  #drop(drafted: DraftedFile): void {
    this.#keptBytes -= this.#wholes.get(drafted)?.byteLength ?? 0;
    this.#wholes.delete(drafted);
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
function weightOfTrials(weight: TrialWeightContext, { weighed }: DraftedFile): TrialWeightContext {
  const keys = weighed.map(({ file, trial }) => trialKey(file, trial));
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
