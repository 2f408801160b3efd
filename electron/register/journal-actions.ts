/** What a person did, in fixed words: an entry of the journal never carries a name in its title. */
export const journalActions = [
  "register made",
  "athlete added",
  "athlete changed",
  "injury or operation changed",
  "session added",
  "session changed",
  "cautions added",
  "recordings imported",
  "trials changed",
  "protocol changed",
  "findings entered",
  "consent changed",
  "settings changed",
  "decision written",
  "archive imported",
  "copy made elsewhere",
  "copy checked",
  "moved to the bin",
  "taken out of the bin",
  "erased",
  "undone",
  "done again",
  "passphrase changed",
  "restored from a backup",
] as const;

export type JournalAction = (typeof journalActions)[number];
