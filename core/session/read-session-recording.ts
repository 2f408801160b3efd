import { type Finding, proseFinding } from "../ground/finding.ts";
import { oppositeSide } from "../ground/limb.ts";
import type { RecordingFile } from "../recording/file.ts";
import { readRecording } from "../recording/read-recording.ts";
import type { LayoutAnswers } from "../recording/reading-statements.ts";
import type { Plate } from "../recording/recording.ts";
import type { ReadRecording } from "../recording/recording-as-read.ts";
import type { Settings } from "../settings/settings.ts";
import { entriesOfFile } from "../stated/entries-by-file.ts";
import { readingAnswers } from "../stated/reading-answers.ts";
import type { SessionDescription } from "../stated/session.ts";
import type { StatedPlate } from "../stated/stated-plate.ts";
import { inPlateWords } from "../words/english/plate-words.ts";
import type { SessionStatements } from "./session-input.ts";

/** Reads one file of a session with everything that was stated about it: options outrank session.json. */
export function readSessionRecording(file: RecordingFile, input: SessionStatements, settings: Settings): ReadRecording {
  const { description, stated } = input;
  const entries = entriesOfFile(description, file.path);
  const massKg = stated.massKg ?? description.massKg;
  const answers: LayoutAnswers = {
    ...(massKg === undefined ? {} : { massKg }),
    ...readingAnswers(Object.assign({}, ...entries)),
    ...stated.layout,
  };
  const read = readRecording(file, answers, settings, input.layouts);
  if (read.recording === undefined) return read;
  const { plates } = read.recording;
  const ofFile = platesOfFile(description, file.path);
  const unknown = ofFile.filter(
    ({ column }) => !plates.some((plate) => plate.name === column && plate.limb !== "both"),
  );
  const isOption = stated.layout?.platesStated === true || stated.layout?.swapPlates !== undefined;
  const said = isOption ? [] : [...ofFile, ...(description.plates ?? [])];
  const feet = answers.swapPlates === true ? said.map((each) => ({ ...each, foot: oppositeSide(each.foot) })) : said;
  return {
    ...read,
    recording: { ...read.recording, plates: plates.map((plate) => statedFoot(plate, feet)) },
    findings: [...read.findings, ...unknown.map((each) => unknownPlate(each, plates))],
  };
}

/** Which foot stood on which column in one file, as stated for that file alone; empty where nobody did. */
export function platesOfFile(description: SessionDescription, path: string): readonly StatedPlate[] {
  return entriesOfFile(description, path).flatMap((entry) => entry.plates ?? []);
}

/** The foot that the tester says stood on a plate outranks the name of its column; the first statement counts. */
function statedFoot(plate: Plate, feet: readonly StatedPlate[]): Plate {
  const stated = feet.find((each) => each.column === plate.name);
  if (stated === undefined || plate.limb === "both") return plate;
  return { ...plate, limb: stated.foot, proof: "stated" };
}

function unknownPlate({ column }: StatedPlate, plates: readonly Plate[]): Finding {
  const names = plates.filter((plate) => plate.limb !== "both").map((plate) => `"${plate.name}"`);
  return proseFinding(
    "session-entry-unused",
    "warning",
    `It is stated which foot stood on "${column}", which is not a plate of this recording.`,
    names.length === 0
      ? "Take the statement away: this recording has no plate for one foot alone."
      : `Correct the name; the plates are ${names.join(" and ")}.`,
    { where: inPlateWords(column) },
  );
}
