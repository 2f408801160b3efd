import { countOf } from "../../../ground/plain-words.ts";

/** What is said of the register: which it is, its passphrase, its protection. */
export const registerWords = {
  guessingTakesLong: "Guessing this passphrase would take long.",
  passphrasesDiffer: "The two passphrases differ.",
  passphrase: "Passphrase",
  whatItProtects:
    "A passphrase protects names, notes, findings and recordings. Without it nobody can read them, and nobody can bring it back when it is forgotten.",
  noPassphrase:
    "No passphrase is set: what protects the data when this computer is lost is the encryption of its disk. A passphrase encrypts names, notes, findings and recordings; nobody can bring it back when it is forgotten.",
  newPassphrase: "New passphrase",
  showPassphrase: "Show the passphrase",
  theSameAgain: "The same again",
  showTypedAgain: "Show the passphrase typed again",
  changePassphrase: "Change the passphrase",
  setPassphrase: "Set the passphrase",
  removePassphrase: "Remove the passphrase",
  forgetIt: "Forget it on this computer",
  locksItself: "Locks itself when nobody is there for",
  never: "never",
  minutes: (minutes: string | number) => `${minutes} minutes`,
  whileLockedShow: "While it is locked, show how many recordings of a watched folder came in, without names",
  lockNow: "Lock now",
  withoutARegister: "This program was started without a register; sessions live until it is closed.",
  theRegister: "The register",
  noRegister: "No register is open.",
  nothingTouched: (problem: string) => `${problem} Nothing of it was touched.`,
  liesAt: (file: string) => `The register lies at ${file}.`,
  tryAgain: "Try to open it again",
  startYourOwn: "Start your own register",
  openTheDemo: "Open the simulated demo world",
  demo: "Demo.",
  demoIsACopy: (deed: string) =>
    `Invented athletes, simulated recordings: a copy to try everything on. It is thrown away when you ${deed} your own register.`,
  goBackTo: "go back to",
  start: "start",
  openYourOwn: "Open your own register",
  protectedByTheDisk:
    "The register has no passphrase: what protects it when this computer is lost is the encryption of its disk.",
  writtenAgain:
    "Everything is being written again under the register's new protection. You can go on working; it is finished at the next opening if the program is closed.",
  writtenAgainProgress: "Written again under the new protection",
  doneOf: (done: number, parts: number) => `${done} of ${countOf(parts, "part")}`,
  thisLiesAt: (file: string) => `This register lies at ${file}.`,
};
