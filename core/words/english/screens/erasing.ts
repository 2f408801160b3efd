import { countOf } from "../../../ground/plain-words.ts";

/** What the bin says, the question before erasing and the certificate after it. */
export const erasing = {
  bin: "Bin",
  binIsEmpty: "The bin is empty.",
  takeOutOfBin: (record: string) => `Take out of the bin: ${record}`,
  takeOut: "Take out",
  eraseRecord: (record: string) => `Erase for good: ${record}`,
  eraseForGoodAsked: "Erase for good…",
  eraseRecordQuestion: (record: string) => `Erase for good: ${record}?`,
  certificate: (record: string) => `Certificate of erasure: ${record}`,
  close: "Close",
  looking: "Looking at what hangs on it …",
  cannotBeUndone: (gone: string) => `${gone} It cannot be undone.`,
  noCopyElsewhere: "No copy elsewhere is known. One that was made outside this program stays where it is.",
  copiesNotReached: "These copies elsewhere cannot be reached; delete them yourself:",
  keepEverything: "Keep everything",
  eraseForGood: "Erase for good",
  andFromBackups: (backups: number) => ` and from ${countOf(backups, "backup")} beside it`,
  willBeGone: (records: string, rewritten: string) =>
    `${records} will be gone from the register, from its journal's contents${rewritten}.`,
  needsLook: "Needs a look:",
  keptNowhere: "This page is kept nowhere. Print or save it if it has to be shown to anybody.",
  tryAgain: "Try again",
  print: "Print",
  saveAsText: "Save as text",
  closeTheCertificate: "Close the certificate",
};
