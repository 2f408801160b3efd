/** Help on `register`. */
export const registerHelp = `counterpoise register COMMAND --register FILE [options]

Keeps athletes, sessions and recordings in one file.

  list                        the athletes, one a line: code, name, involved side, sessions, last session;
                              --search TEXT shows those whose code or name holds it
  journal                     the newest 200 entries, newest first: number, time, what was done, by whom, user of the system
  import FOLDER|ARCHIVE…      recordings with their session.json, or archives; makes the register where there is none.
                              What is there already stays as it is. --cautions not-known --by NAME states of every
                              imported folder whose cautions lack answers that they are not known; it is printed, and
                              refused for sessions of today or without a date
  export --out FILE           everything as one archive; --athlete CODE: that athlete alone
  backup                      a copy beside the register, one of the last ten; --out FILE: a copy elsewhere
  restore BACKUP              says what a backup holds and what will protect it; --confirm replace puts it in the place
                              of the register's content, of which a copy is made first. A register under a passphrase
                              stays under it, one without takes over the backup's
  verify                      checks every row, every recording, the references and the journal, and prints the journal's
                              code; --code CODE checks one that was printed before, say on a sheet
  copies                      every copy that is known, kept or elsewhere: where, what it is, when it was made, size, what
                              protects it, when it was checked, whether it can be reached, and below it what is the
                              matter: damaged, under an earlier passphrase, made before somebody was erased.
                              --verify checks each one first; --gone PATH takes one off the list that was deleted
  erase --athlete CODE        says what erasing would remove; --confirm CODE erases that athlete for good, from the list
                              or the bin, and prints what was searched and found. The same again, or erase alone,
                              tells how an erasure that was broken off was finished
  protect                     puts the register under the passphrase in --new-passphrase-file, or changes it; kept
                              backups come along, and one that cannot is named
  unprotect                   takes the passphrase away

Options:
  --register FILE             the register
  --by NAME                   who acts: stands in the journal beside the system's user, with every command that writes
  --format FORMAT             text (default) or json (the keys are described in electron/register/README.md)
  --passphrase-file FILE      holds the register's passphrase in its first line
  --file-passphrase-file FILE holds the passphrase of an archive or a backup kept elsewhere: export and backup put
                              the file under it; import, restore and copies --verify open it
  --new-passphrase-file FILE  protect: the passphrase from now on; restore: that of the register inside the backup

A passphrase file must be its owner's alone (chmod 600; on Windows that is not looked at); a pipe or /dev/stdin will do.
A new passphrase that would be guessed too soon is refused. One that is forgotten cannot be recovered. Erasing reaches
the register and the copies beside it; archives and backups kept elsewhere are named and have to be deleted by hand. Afterwards
every file of the register and of the folder of your data is searched for what was erased.

Examples:
  counterpoise register import sample-traces --register clinic.sqlite
  counterpoise register list --register clinic.sqlite --search tveit
  counterpoise register export --register clinic.sqlite --athlete GH-07 --out gh-07.zip
  counterpoise register copies --verify --register clinic.sqlite
  counterpoise register verify --register clinic.sqlite --format json

Exit codes: 0 done, 1 done but something needs eyes or could not be checked (it is in the output), 2 something typed
cannot be, there is nothing to read or it was refused, 3 a mistake in the program.
`;
