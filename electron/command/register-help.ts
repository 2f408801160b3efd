/** Help on `register`. */
export const registerHelp = `counterpoise register COMMAND --register FILE [options]

Keeps athletes, sessions and recordings in one file.

  list                        the athletes; --search TEXT narrows the list
  import FOLDER|ARCHIVE…      recordings with their session.json, or archives; makes the register where there is none
  export --out FILE.zip       the whole register as one archive, or --athlete CODE of one athlete
  backup                      a backup among the register's own, or --out FILE for one elsewhere
  restore BACKUP              what a backup holds; --confirm replace puts it in the place of the register's content
  verify                      checks every row, every recording, the references and the journal
  erase --athlete CODE        what erasing would remove; --confirm CODE erases that athlete for good
  protect                     puts the register under the passphrase in --new-passphrase-file, or changes it
  unprotect                   takes the passphrase away

Options:
  --register FILE             the register
  --format FORMAT             text (default) or json
  --passphrase-file FILE      holds the register's passphrase in its first line
  --file-passphrase-file FILE holds the passphrase of an archive or a backup kept elsewhere: export and backup put
                              the file under it, import and restore open it

Examples:
  counterpoise register import sample-traces --register clinic.sqlite
  counterpoise register list --register clinic.sqlite --search tveit
  counterpoise register export --register clinic.sqlite --athlete GH-07 --out gh-07.zip
  counterpoise register verify --register clinic.sqlite --format json

Exit codes: 0 done, 1 done but something needs eyes (it is in the output), 2 something typed cannot be or was refused,
3 a mistake in the program.
`;
