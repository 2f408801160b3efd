import type { C3dAnswers } from "../../../../core/recording/c3d/c3d-answers.ts";
import { type C3dRecording, readC3dRecording } from "../../../../core/recording/c3d/read-c3d-recording.ts";
import { defaultSettings } from "../../../../core/settings/settings.ts";
import { type StandingFile, standingFile } from "../../bytes/c3d/standing-file.ts";
import { writeC3d } from "../../bytes/c3d/write-c3d.ts";

/** Writes a small file of somebody standing and reads it with the shipped settings. */
export function readStanding(options: StandingFile = {}, answers: C3dAnswers = {}): C3dRecording {
  return readC3dRecording(writeC3d(standingFile(options)), answers, defaultSettings);
}

/** Findings as "code:severity", in order. */
export function codesOf({ findings }: Pick<C3dRecording, "findings">): string[] {
  return findings.map((each) => `${each.code}:${each.severity}`);
}
