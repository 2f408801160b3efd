import { countOf } from "../../../ground/plain-words.ts";

/** What is asked about recordings wherever they are shown: the foot, the leg, the test, what trials wait for. */
export const recordingQuestions = {
  mayAdd: (test: string, trials: number, mostAttempts: number, practice: number) =>
    `A treating clinician may add the ${test}: ${trials} wanted, ${mostAttempts} at most, ${practice} practice.`,
  whoAdds: "Treating clinician who adds it",
  addIt: "Add it",
  whatTrialsWaitFor: "What trials wait for",
  boxHeight: "Height of the box, m",
  otherBoxHeight: "or another height, m",
  stateIt: "State it",
  boxHeightIsANumber: "The height of the box is a number of metres, such as 0.30.",
  chooseWrongLeg:
    "Choose the single-leg trials that name the wrong leg. What is called a jump of the left leg in them becomes one of the right. Undo takes it back in one step.",
  correctLeg: (trials: number) => `Correct the leg of ${countOf(trials, "trial")}`,
  cancel: "Cancel",
  chosenOfGroup: (group: string, chosen: number, all: number) => `${group}: ${chosen} of ${all}`,
  howAthleteStood: "How the athlete stood",
  feetOnPlates: (side: string, plate: string, otherSide: string, otherPlate: string) =>
    `The ${side} foot on ${plate}, the ${otherSide} foot on ${otherPlate}`,
  inTheRecordingsChosen: "In the recordings chosen below. Undo takes it back in one step.",
  stateFor: (recordings: number) => `State it for ${countOf(recordings, "recording")}`,
  plateWithColumns: (plate: string, columns: readonly string[]) => `${plate} (column “${columns.join("” or “")}”)`,
  otherAlike: "the other that looks the same",
  othersAlike: (count: number) => `the ${count} others that look the same`,
  whatTraceLooksLike: "What the trace looks like",
  traceLooksLike: (test: string, reason: string) => `The trace looks like ${test}: ${reason}.`,
  takeItAs: (test: string) => `Take it as ${test}`,
  takeItAndOthers: (others: string) => `Take it and ${others} so`,
  oneToTheBin: "to the register's bin; Undo brings it back",
  severalToTheBin: "to the register's bin; Undo brings them back",
  undoBringsOneBack: "Undo brings it back",
  undoBringsSeveralBack: "Undo brings them back",
  takeOut: "Take out of the session",
  takeSeveralOut: (recordings: number) => `Take ${countOf(recordings, "recording")} out of the session`,
  chooseTurnedRound:
    "Choose the recordings in which the athlete stood the other way round than it says now; those that the contradiction speaks of are chosen already. What is called left in them becomes right. Undo takes it back in one step.",
  turnRoundIn: (recordings: number) => `Turn left and right round in ${countOf(recordings, "recording")}`,
  whichFootWasWhere: "Which foot was where",
  turnRound: "Turn left and right round…",
  otherLegJumped: "The other leg jumped…",
  sayWhichFoot: "Say which foot was where…",
  whichLegJumped: "Which leg jumped?",
  whichFootWasWhereQuestion: "Which foot was where?",
  close: "Close",
  feetUnproved: (recordings: number) =>
    `Nothing proves which foot stood on which plate in ${countOf(recordings, "recording")}: names of columns alone do not. Their values are told by plate, and no index is made, until you say it or a single-leg trial on the same plates shows it.`,
};
