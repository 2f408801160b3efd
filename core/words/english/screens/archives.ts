import { countOf } from "../../../ground/plain-words.ts";

/** What the panel of archives says. */
export const archives = {
  tooLarge:
    "This archive is larger than 64 MB: give its whole path on this computer above and take it in from there. Nothing was changed.",
  written: (protection: string, records: number, recordings: number) =>
    `Written ${protection}: ${countOf(records, "record")}, ${countOf(recordings, "recording")} among them. Keep it as carefully as the register.`,
  withoutPassphrase: "without a passphrase",
  underItsPassphrase: "under its passphrase",
  archives: "Archives",
  whatAnArchiveIs:
    "An archive takes an athlete, or everybody, to another computer: an open format, each part with a checksum. What is in the register already never comes in twice.",
  whom: "Whom to take along",
  everybody: "everybody",
  passphraseIfWanted: "Passphrase of the archive, if wanted",
  showPassphrase: "Show the archive's passphrase",
  takeAlongAsFile: "Take along as a file",
  fileOnThisComputer: "Or a file on this computer, with its whole path",
  writeItThere: "Write it there",
  takeInFromThere: "Take in from there",
  passphraseToTakeIn: "Passphrase of an archive to take in, if it has one",
  showPassphraseToTakeIn: "Show the passphrase of the archive to take in",
  takeArchive: "Take an archive in",
  archiveToTakeIn: "Archive to take in",
  cameIn: (records: number, recordings: number, same: number) =>
    `${countOf(records, "record")} came in, ${countOf(recordings, "recording")} among them; ${same} were here already.`,
  differHere: (kept: number) => `${kept} differ here: what this register says stands.`,
};
