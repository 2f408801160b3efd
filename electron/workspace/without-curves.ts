import type { ReadRecording } from "../../core/recording/recording-as-read.ts";
import type { DraftedFile, FileTrial } from "../../core/session/file-trials.ts";
import type { AnalyzedJump } from "../../core/session/session-analysis.ts";

/** A file as read and cut, small: its samples are asked for again where something is drawn from them. */
export class DraftWithoutCurves implements DraftedFile {
  readonly path: string;
  readonly sha256: string;
  readonly read: ReadRecording;
  readonly weighed: DraftedFile["weighed"];
  readonly #whole: () => DraftedFile;

  /** @param whole the same file with its samples, at hand or read again */
  constructor({ path, sha256, read, weighed }: DraftedFile, whole: () => DraftedFile) {
    this.path = path;
    this.sha256 = sha256;
    this.read = read.recording === undefined ? read : new ReadWithoutCurves(read, () => whole().read);
    this.weighed = weighed;
    this.#whole = whole;
  }

  get drafts(): DraftedFile["drafts"] {
    return this.#whole().drafts;
  }
}

class ReadWithoutCurves implements ReadRecording {
  readonly file: ReadRecording["file"];
  readonly reading: ReadRecording["reading"];
  readonly findings: ReadRecording["findings"];
  readonly #whole: () => ReadRecording;

  constructor({ file, reading, findings }: ReadRecording, whole: () => ReadRecording) {
    this.file = file;
    this.reading = reading;
    this.findings = findings;
    this.#whole = whole;
  }

  get recording(): ReadRecording["recording"] {
    return this.#whole().recording;
  }
}

/** An analysed trial, small: its motion is made again where it is drawn. */
export class TrialWithoutCurves implements FileTrial {
  readonly result: FileTrial["result"];
  readonly key: string;
  readonly evidence: FileTrial["evidence"];
  readonly #motion: (() => AnalyzedJump | undefined) | undefined;

  constructor({ result, key, evidence, jump }: FileTrial, motion: () => AnalyzedJump | undefined) {
    this.result = result;
    this.key = key;
    this.evidence = evidence;
    this.#motion = jump === undefined ? undefined : motion;
  }

  get jump(): AnalyzedJump | undefined {
    return this.#motion?.();
  }
}
